namespace MarkReader.Alignment.Verdicts;

/// <summary>A measured value against its tolerance, uncertainty taken into account.</summary>
public enum Verdict
{
    /// <summary>The whole region of the value lies in the tolerance.</summary>
    Within,

    /// <summary>The region holds values on both sides of a limit: one more pulse may decide.</summary>
    Undecided,

    /// <summary>The whole region lies outside the tolerance.</summary>
    Outside,
}

/// <summary>A verdict with its probabilities.</summary>
/// <param name="Verdict">By <see cref="DecisionRule"/>.</param>
/// <param name="Probability">
/// Conformance probability: that the true value lies in the tolerance, given the measured one (JCGM 106:2012, clause 7). For several values together
/// a lower bound, 1 − Σ(1 − p).
/// </param>
/// <param name="OutsideLevel">Largest probability of a result as far outside as this one while the true value is in the tolerance; 1 for a result in it.</param>
public sealed record Conformity(Verdict Verdict, double Probability, double OutsideLevel);
