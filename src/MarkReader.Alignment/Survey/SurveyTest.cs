namespace MarkReader.Alignment.Survey;

/// <summary>The test for one fault.</summary>
/// <param name="Effect">What the fault would do to the marks over the bed, mm.</param>
/// <param name="Probability">Of a test value at least as large without the fault (χ²).</param>
/// <param name="Level">The fault is significant when the probability is at most this.</param>
public sealed record SurveyTest(SurveyFault Fault, double Effect, double Probability, double Level)
{
    public bool IsSignificant => Probability <= Level;
}
