using MarkReader.Alignment.LineFitting;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Survey;

/// <summary>What a corner survey says.</summary>
/// <param name="Fit">The fitted terms; null when the places do not determine them.</param>
/// <param name="Findings">Significant faults, the one with the largest effect over the bed first; empty when nothing is significant.</param>
/// <param name="Twist">The height of the right far corner's mark above the plane of the other three, mm, significant or not; null without a fit.</param>
/// <param name="Cure">What to do about the first finding; null when there is none.</param>
/// <param name="Expected">The marks at the four corners after the cure: after a realignment, where they fall against each other.</param>
/// <param name="NextPlace">Where to fire when there are not enough data; null otherwise.</param>
/// <param name="Warnings">What the user should know.</param>
public sealed record SurveyDiagnosis(
    SurveyFit? Fit,
    IReadOnlyList<SurveyFinding> Findings,
    Prediction? Twist,
    SurveyCure? Cure,
    IReadOnlyDictionary<BedCorner, MeasuredPoint> Expected,
    (Length X, Length Y)? NextPlace,
    IReadOnlyList<Warning> Warnings)
{
    /// <summary>The tests that were made, of leg 1, leg 2 and twist, significant or not; empty without a fit.</summary>
    public IReadOnlyList<SurveyTest> Tests { get; init; } = [];

    /// <summary>Whether the places determine the four terms.</summary>
    public bool HasEnoughData => Fit is not null;

    /// <summary>The fault with the largest effect; null when nothing is significant.</summary>
    public SurveyFinding? First => Findings.Count > 0 ? Findings[0] : null;
}
