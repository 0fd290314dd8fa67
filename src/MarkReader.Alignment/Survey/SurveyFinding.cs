using MarkReader.Alignment.LineFitting;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Survey;

/// <summary>What a survey finds.</summary>
public enum SurveyFault
{
    /// <summary>A slope left in leg 1: the mark walks with the gantry's travel.</summary>
    LegOneSlope,

    /// <summary>A slope left in leg 2: the mark walks with the head's travel.</summary>
    LegTwoSlope,

    /// <summary>Three corners agree in height and one stands out: the frame is twisted.</summary>
    Twist,
}

/// <summary>A fault that is significant against the marks' uncertainty.</summary>
/// <param name="Probability">Of a test value at least as large without the fault (χ²).</param>
public abstract record SurveyFinding(double Probability)
{
    public abstract SurveyFault Fault { get; }

    /// <summary>What the fault does to the marks over the bed, mm.</summary>
    public abstract double Effect { get; }
}

/// <summary>A slope left in a leg.</summary>
/// <param name="Leg">1 or 2.</param>
/// <param name="Walk">The mark's walk over the leg's travel, from the near end to the far one.</param>
/// <param name="Covariance">Its covariance, mm².</param>
/// <param name="Slope">The walk over the travel, mrad.</param>
public sealed record SlopeFinding(int Leg, CardVector Walk, Covariance2 Covariance, CardVector Slope, double Probability) : SurveyFinding(Probability)
{
    public override SurveyFault Fault => Leg == 1 ? SurveyFault.LegOneSlope : SurveyFault.LegTwoSlope;

    public override double Effect => Walk.Magnitude;
}

/// <summary>A twisted frame.</summary>
/// <param name="Corner">The corner whose mark stands out.</param>
/// <param name="Height">How far its mark stands above (positive) or below the plane of the other three, with its standard uncertainty, mm.</param>
/// <param name="CornerWeights">How probable it is that this corner is the one, and not another.</param>
public sealed record TwistFinding(BedCorner Corner, Prediction Height, IReadOnlyDictionary<BedCorner, double> CornerWeights, double Probability)
    : SurveyFinding(Probability)
{
    public override SurveyFault Fault => SurveyFault.Twist;

    public override double Effect => Math.Abs(Height.Value);

    /// <summary>Whether the mark at the corner is too high, so that the head stands too low there and can be raised with shims.</summary>
    public bool IsHigh => Height.Value > 0;
}
