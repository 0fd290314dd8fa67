using MarkReader.Cameras.Boards;
using MarkReader.Cameras.Calibration;
using MarkReader.Quantities;

namespace MarkReader.Cameras.CardChecks;

/// <summary>A printed card as its photos show it.</summary>
/// <param name="Stretch">Relative excess of the print's scale along u over that along v.</param>
/// <param name="Skew">By how much less than a right angle u and v enclose, rad.</param>
/// <param name="Bend">How far the card within its outline is from flat, mm: highest less lowest place.</param>
/// <param name="InkSpread">How far black areas reach beyond their outlines, mm.</param>
/// <param name="ScaleU">Length over nominal length along u; null when nobody measured the rulers.</param>
/// <param name="PrintFault">Standard deviation of the printed edges' places, mm; 0 when the photos show none.</param>
/// <param name="AsDrawn">Errors of marks when the card is taken as drawn. Without rulers its size is taken as right.</param>
/// <param name="Corrected">Errors left when the rulers are stated; null without rulers.</param>
/// <param name="PrintPart">The worst error if the paper were flat.</param>
/// <param name="BendPart">The worst error if the print were as drawn.</param>
/// <param name="Views">The photos used.</param>
/// <param name="Places">From where they were taken.</param>
/// <param name="Dropped">Photos that did not fit the others.</param>
public sealed record CheckedCard(
    BoardShape Shape,
    CardTerm Stretch,
    CardTerm Skew,
    CardTerm Bend,
    CardTerm InkSpread,
    CardTerm? ScaleU,
    CardTerm? ScaleV,
    double PrintFault,
    ErrorField AsDrawn,
    ErrorField? Corrected,
    Length PrintPart,
    Length BendPart,
    RulerCheck? Rulers,
    IReadOnlyList<CalibratedView> Views,
    IReadOnlyList<ViewPlace> Places,
    IReadOnlyList<DroppedView> Dropped,
    double ResidualPx)
{
    /// <summary>From this share of a photo's edge sections on, or of the photos, those that do not fit are of another shape (common practice, no source).</summary>
    private const double OtherShape = 1.0 / 3;

    /// <summary>Whether the photos show more than one shape: of another card, or of one that was moved or bent between photos.</summary>
    public bool ShapesDiffer => Dropped.Count >= OtherShape * (Views.Count + Dropped.Count) || Views.Any(Differs) || Agreement.IsRejected;

    /// <summary>Whether the photos that were used show one and the same shape.</summary>
    public ShapeAgreement Agreement { get; init; } = new([]);

    /// <summary>Whether so much of a photo that was used does not fit that it shows another shape.</summary>
    public static bool Differs(CalibratedView view) => view.Sightings - view.Used >= OtherShape * view.Sightings;

    /// <summary>Variances of stretch, skew and the three coefficients of the bend.</summary>
    internal IReadOnlyList<double> Variances { get; init; } = [];
}

/// <summary>One way in which a print may differ from its drawing.</summary>
/// <param name="Probability">Of photos that show at least as much when there is nothing (Wald's test); null where that is not asked.</param>
public sealed record CardTerm(double Value, double StandardUncertainty, double? Probability)
{
    /// <summary>Below this probability a term counts as shown.</summary>
    public const double Level = 0.01;

    public bool Shown => Probability < Level;
}

/// <summary>Whether each photo's own shape is that of all photos together.</summary>
/// <param name="Views">For each photo that was used the probability that photos of one card show as much.</param>
public sealed record ShapeAgreement(IReadOnlyList<double> Views)
{
    /// <summary>Of photos of one card this share, at most, is said to be of several.</summary>
    public const double Level = 0.005;

    /// <summary>Of the whole set: the least of the photos' times their number (Bonferroni), 1 at most.</summary>
    public double Probability => Math.Min(1, Views.Count * Views.DefaultIfEmpty(1).Min());

    public bool IsRejected => Probability < Level;
}

/// <summary>Whether the rulers fit the photos, which show the stretch of u against v by themselves.</summary>
/// <param name="Difference">Stretch by the rulers less that by the photos.</param>
/// <param name="StandardUncertainty">Of the difference.</param>
public sealed record RulerCheck(double Difference, double StandardUncertainty)
{
    /// <summary>Two-sided 99 % of the normal distribution.</summary>
    private const double Most = 2.576;

    public bool Agrees => Math.Abs(Difference) <= Most * StandardUncertainty;
}
