using MarkReader.Quantities;

namespace MarkReader.Alignment.Survey;

/// <summary>Levels and priors of the diagnosis.</summary>
/// <remarks>
/// Three tests are made; their levels add up to the probability of finding any fault in a machine that has none, 5 % (Bonferroni, with unequal shares:
/// twist needs the larger one, since only one component shows it).
/// </remarks>
public sealed record SurveyOptions
{
    public static SurveyOptions Default { get; } = new();

    /// <summary>Level of the test for twist: χ² with 1 degree of freedom.</summary>
    public double TwistLevel { get; init; } = 0.04;

    /// <summary>Level of the test for a slope left in leg 1, and of that in leg 2: χ² with 2 degrees of freedom each.</summary>
    public double SlopeLevel { get; init; } = 0.005;

    /// <summary>Standard deviation of the walk that alignment leaves in a leg, per component. It tells which corner stands out.</summary>
    public Length WalkLeft { get; init; } = Length.FromMillimetres(0.15);

    /// <summary>How the mark at a corner answers a shim there.</summary>
    public ShimResponse Response { get; init; } = ShimResponse.Prior;
}
