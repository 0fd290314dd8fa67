using MarkReader.Imaging.Rectification;
using MarkReader.Quantities;

namespace MarkReader.Imaging.Marks;

/// <summary>Carries a fitted mark from the printed card's frame to the tape and puts its uncertainty budget together.</summary>
/// <param name="card">The registered card.</param>
/// <param name="print">Scale of the print.</param>
/// <param name="tape">Height of the tape, mm.</param>
/// <param name="tapeUncertainty">Its standard uncertainty, mm.</param>
internal sealed class MarkBudget(RegisteredCard card, PrintScale print, double tape, double tapeUncertainty)
{
    /// <summary>Beyond the models of noise and shape, px: interpolation and pixel response.</summary>
    private const double Floor = 0.02;

    /// <summary>Part of the edges' unexplained residual that may be common to a neighbourhood.</summary>
    private const double FlatnessShare = 0.35;

    /// <summary>Relative uncertainty of the parallax's direction and size: the focal length is read from EXIF or assumed.</summary>
    private const double SightUncertainty = 0.1;

    public TargetProjection Projection { get; } = new(card.View, print, tape);

    public Mark ToMark(FittedMark fit)
    {
        CardPoint centre = Projection.FromPrint(fit.Centre);
        CardVector sight = card.View.Camera.ByHeight(centre);
        UncertaintyComponent[] budget =
        [
            new(UncertaintySource.Noise, Projection.FromPrint(fit.Noise)),
            new(UncertaintySource.MarkShape, Projection.FromPrint(fit.ShapeDoubt)),
            new(UncertaintySource.CardView, Projection.FromPrint(card.View.ViewCovariance(fit.Centre))),
            // Edges all around the zone that miss their places say that places within it may do so too, if less: most of what moves one edge is its own.
            new(UncertaintySource.Flatness, Projection.FromPrint(card.View.ToCard(fit.Centre, Covariance2.Isotropic(FlatnessShare * card.Misfit)))),
            new(UncertaintySource.Interpolation, Projection.FromPrint(card.View.ToCard(fit.Centre, Covariance2.Isotropic(Floor)))),
            new(UncertaintySource.PrintScale, new(Square(fit.Centre.U * print.UncertaintyU), 0, Square(fit.Centre.V * print.UncertaintyV))),
            new(UncertaintySource.Parallax, Covariance2.Along(tapeUncertainty * sight) + Covariance2.Isotropic(SightUncertainty * tape * sight.Magnitude)),
        ];
        return new(
            new(centre, budget.Select(c => c.Covariance).Aggregate((a, b) => a + b)),
            Projection.ToPhoto(centre),
            Length.FromMillimetres(fit.Diameter * Math.Sqrt(print.U * print.V)),
            new((fit.Outline?.Shape ?? fit.Symmetric.Shape).AxisRatio, Math.Clamp(fit.Symmetric.Depth, 0, 1), fit.Symmetric.EdgeWidth),
            [.. budget.Where(c => c.Covariance.Uu + c.Covariance.Vv > 0)]);
    }

    public DoubtfulSpot ToSpot(MarkCandidate spot)
    {
        CardPoint centre = Projection.FromPrint(spot.Centre);
        return new(centre, Projection.ToPhoto(centre), Length.FromMillimetres(spot.Diameter), spot.Rejection?.Words() ?? "");
    }

    private static double Square(double x) => x * x;
}
