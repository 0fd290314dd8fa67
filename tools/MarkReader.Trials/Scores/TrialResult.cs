using MarkReader.Alignment.Verdicts;
using MarkReader.Practice.Machines;
using MarkReader.Practice.Truth;
using MarkReader.Trials.Machines;

namespace MarkReader.Trials.Scores;

/// <summary>A verdict beside the truth.</summary>
/// <param name="Of">leg or bed.</param>
/// <param name="TrulyWithin">Whether the true spread was within the tolerance at that time.</param>
internal sealed record GivenVerdict(string Of, Verdict Verdict, bool TrulyWithin);

/// <summary>The first complete survey's word on twist.</summary>
/// <param name="True">The true twist as the marks would show it, mm.</param>
/// <param name="Uncertainty">Standard uncertainty of the measured one, mm.</param>
/// <param name="Found">Whether it was found significant.</param>
internal sealed record TwistTold(double True, double Uncertainty, bool Found);

/// <summary>A machine's true spread over the bed, mm; infinite when the beam is lost somewhere.</summary>
internal sealed record Ending(double Spread)
{
    public bool IsWithin => Spread <= TrialMachine.Tolerance.Millimetres;

    public static Ending Of(PracticeMachine machine) =>
        new(machine.BedSpread().TryGet(out MarkSpread? spread, out _) ? spread.Greatest.Millimetres : double.PositiveInfinity);
}

/// <summary>How a machine was brought into alignment.</summary>
/// <param name="Unfinished">Why not; null when done.</param>
/// <param name="Pulses">On leg 1 and on leg 2.</param>
/// <param name="Turns">Turns of a screw, by leg.</param>
/// <param name="SurveyPulses">Pulses of corner surveys.</param>
internal sealed record TrialResult(
    Ending Before, Ending After, string? Unfinished, IReadOnlyList<int> Pulses, IReadOnlyList<int> Turns, int SurveyPulses, IReadOnlyList<GivenVerdict> Verdicts, TwistTold? Twist);
