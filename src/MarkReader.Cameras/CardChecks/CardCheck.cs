using MarkReader.Cameras.Boards;
using MarkReader.Cameras.Calibration;
using MarkReader.Cameras.Models;
using MarkReader.Cameras.Texts;
using MarkReader.Quantities;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;

namespace MarkReader.Cameras.CardChecks;

/// <summary>From photos of a printed card by a known camera to the card's shape, and to the errors of marks on it.</summary>
/// <remarks>
/// The fit is the calibration's, with the camera held by its profile's uncertainty. Photos do not tell the size of a print, since their distance is unknown.
/// </remarks>
public static class CardCheck
{
    /// <summary>With two a bad one cannot be told from a good one.</summary>
    public const int LeastViews = 3;

    private const CameraTerms Terms = CameraTerms.K1 | CameraTerms.Stretch | CameraTerms.Skew | CameraTerms.Bend | CameraTerms.Spread;

    /// <summary>Degrees: a photo tilted by less counts as from above; two from sides that differ by less, as from one side.</summary>
    private const double Tilted = 12, Apart = 60;

    /// <summary>How many of its standard uncertainties the camera may differ from its profile.</summary>
    private const double MostShift = 4;

    /// <summary>Relative change of the focal length between photos of one card, whose distances differ little (common practice, no source).</summary>
    private const double Refocused = 0.002;

    /// <summary>By how much a card that is taped down may bend between photos, mm at its sides; marks are then read wrong by some micrometres (common practice, no source).</summary>
    private const double Settling = 0.02;

    private static readonly int[] s_shape = [Globals.Stretch, Globals.Skew, Globals.Bend, Globals.Bend + 1, Globals.Bend + 2];

    /// <param name="views">Of the camera's size, in the sensor's frame; photos of several sizes are refused.</param>
    public static Outcome<CheckedCard> Check(IReadOnlyList<BoardView> views, KnownCamera camera, CheckedPrint print)
    {
        if (views.Count < LeastViews)
            return new Failure(CardCheckFailures.TooFewViews, CalibrationTexts.Word("cardCheck.fewPhotos", views.Count, LeastViews), CalibrationTexts.Get("cardCheck.fewPhotosHint"));
        if (PhotoSizes.Differ(views) is { } differ)
            return differ;
        ArgumentOutOfRangeException.ThrowIfNotEqual(views[0].Photo, camera.Model.Photo);
        BoardPose?[] poses = [.. views.Select(v => CalibrationStart.PoseOf(v, camera.Model))];
        if (poses.Any(p => p is null))
            return Undetermined();
        if (FromOneSide([.. views.Select((v, i) => BoardCoverage.PlaceOf(v, poses[i]!))]))
            return new Failure(CardCheckFailures.OneSide, CalibrationTexts.Get("cardCheck.oneSide"), CalibrationTexts.Get("cardCheck.oneSideHint"));
        double half = print.Side.Millimetres / 2;
        Beliefs beliefs = Beliefs.OfCamera(camera.Model, camera.StandardUncertainties, half);
        CalibrationState start = new(new(camera.Model, BoardShape.Flat), [.. poses.Select(p => p!)], [.. views.Select(v => GrowthField.None(v.Photo))], new Dictionary<int, double>());
        if (ViewScreen.Fit(views, start, LeastViews, some => new CalibrationFit(some, Terms, robust: true, beliefs)) is not { } screened)
            return Undetermined();
        if (Shift(screened.Fit, camera) > MostShift)
        {
            // Several shapes pull the camera off its profile, too.
            if (AgreementOf(screened.Fit, camera, half).IsRejected)
                return new Failure(CardCheckFailures.ShapesDiffer, CalibrationTexts.Word("cardCheck.shapesDiffer", camera.Name), CalibrationTexts.Get("cardCheck.shapesDifferHint"));
            double focal = 100 * ((screened.Fit.State.Shared.Camera.FocalX / camera.Model.FocalX) - 1);
            return new Failure(CardCheckFailures.CameraDiffers, CalibrationTexts.Word("cardCheck.cameraDiffers", camera.Name, focal), CalibrationTexts.Get("cardCheck.cameraDiffersHint"));
        }

        return Result(screened.Views, screened.Dropped, screened.Fit, camera, print);
    }

    private static CheckedCard Result(IReadOnlyList<BoardView> views, IReadOnlyList<DroppedView> dropped, FittedCalibration fit, KnownCamera camera, CheckedPrint print)
    {
        double half = print.Side.Millimetres / 2;
        CardShape seen = ShapeOf(fit);
        CardShape card = print.Rulers is { } rulers ? seen.With(rulers) : seen;
        ViewPlace[] places = [.. views.Select((v, i) => BoardCoverage.PlaceOf(v, fit.State.Poses[i]))];
        Length distance = Length.FromMillimetres(places.Average(p => p.Distance.Millimetres));
        ErrorFields fields = new(PrintedSection.Of(views), half, print.ZoneSide.Millimetres, distance);
        (double uu, double ss) = (card.Covariance[0, 0], card.Covariance[CardShape.Stretch, CardShape.Stretch]);
        double us = card.Covariance[0, CardShape.Stretch];
        return new(
            card.Shape,
            Single(card.Shape.Stretch, ss),
            Single(card.Shape.Skew, card.Covariance[CardShape.Skew, CardShape.Skew]),
            Flatness.Of(card, half),
            Single(card.Shape.Spread, fit.Covariance[Globals.Spread, Globals.Spread]) with { Probability = null },
            print.Rulers is null ? null : new(card.Scale + (card.Shape.Stretch / 2), Math.Sqrt(Math.Max(0, uu + us + (ss / 4))), null),
            print.Rulers is null ? null : new(card.Scale - (card.Shape.Stretch / 2), Math.Sqrt(Math.Max(0, uu - us + (ss / 4))), null),
            fit.Joint.FaultSpread,
            fields.Of(card, null, print.Rulers is not null),
            print.Rulers is null ? null : fields.Of(card, print.Rulers, true),
            fields.Largest(card.Flat),
            fields.Largest(card.AsDrawn),
            print.Rulers is null ? null : Compare(seen, print.Rulers),
            fit.ViewsOf(views),
            places,
            dropped,
            fit.ResidualPx)
        {
            Agreement = AgreementOf(fit, camera, half),
            Variances = [.. card.Covariance.Diagonal().Skip(CardShape.Stretch).Take(CardShape.First - 1)],
        };
    }

    private static ShapeAgreement AgreementOf(FittedCalibration fit, KnownCamera camera, double half) => new(fit.Agreement(s_shape, OwnOf(fit.State.Shared.Camera, camera, half)));

    /// <summary>By how much photos of one card by one camera differ from each other by right, one standard deviation.</summary>
    private static (int Element, double Sigma)[] OwnOf(CameraModel fitted, KnownCamera camera, double half)
    {
        double bend = Settling * (BoardShape.Reach / half) * (BoardShape.Reach / half);
        return
        [
            (Globals.FocalX, Refocused * fitted.FocalX), (Globals.PrincipalX, camera.Move), (Globals.PrincipalY, camera.Move),
            .. Enumerable.Range(Globals.Bend, 3).Select(e => (e, bend)),
        ];
    }

    private static CardTerm Single(double value, double variance) => new(value, Math.Sqrt(variance), 1 - ChiSquared.CDF(1, value * value / variance));

    private static RulerCheck Compare(CardShape seen, RulerScale rulers) => new(
        rulers.U - rulers.V - seen.Shape.Stretch,
        Math.Sqrt(seen.Covariance[CardShape.Stretch, CardShape.Stretch] + (rulers.UncertaintyU * rulers.UncertaintyU) + (rulers.UncertaintyV * rulers.UncertaintyV)));

    /// <summary>What the fit says of the card; its scale is not among it.</summary>
    private static CardShape ShapeOf(FittedCalibration fit)
    {
        IReadOnlyList<int[]> free = fit.Joint.Free;
        int[] from = [.. s_shape.Select(e => Globals.Among(free, e)), .. fit.Joint.Groups.Select((_, i) => free.Count + i)];
        int n = from.Length + 1;
        Matrix<double> covariance = Matrix<double>.Build.Dense(n, n, (i, j) => i == 0 || j == 0 ? 0 : fit.Joint.Matrix[from[i - 1], from[j - 1]]);
        return new(1, fit.State.Shared.Shape, fit.State.Faults, fit.Joint.Groups, covariance);
    }

    /// <summary>By how many standard uncertainties the photos' camera differs from the profile's.</summary>
    private static double Shift(FittedCalibration fit, KnownCamera camera)
    {
        double[] found = fit.State.Shared.Values(), known = new Globals(camera.Model, BoardShape.Flat).Values();
        return new[] { Globals.FocalX, Globals.PrincipalX, Globals.PrincipalY, Globals.K1 }.Max(e => Math.Abs(found[e] - known[e]) / camera.StandardUncertainties[e]);
    }

    private static bool FromOneSide(ViewPlace[] places)
    {
        double[] sides = [.. places.Where(p => p.Tilt.Degrees > Tilted).Select(p => Math.Atan2(p.TowardsV, p.TowardsU))];
        return !sides.Any(a => sides.Any(b => Math.Cos(a - b) < Math.Cos(Apart * Math.PI / 180)));
    }

    private static Failure Undetermined() => new(CardCheckFailures.Undetermined, CalibrationTexts.Get("cardCheck.undetermined"), CalibrationTexts.Get("cardCheck.oneSideHint"));
}
