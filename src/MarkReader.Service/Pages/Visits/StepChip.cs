using MarkReader.Alignment.Verdicts;
using MarkReader.Alignment.Visits;
using MarkReader.Application.Reports;

namespace MarkReader.Service.Pages.Visits;

/// <summary>A step of the work and how it stands.</summary>
/// <param name="Name">1, 2, survey, centring or 3.</param>
/// <param name="Status">now, within, outside, undecided, open, stale or skipped.</param>
public sealed record StepChip(string Name, string Status)
{
    internal static IReadOnlyList<StepChip> All(VisitSetup setup, VisitState state) => [.. VisitSteps.Of(setup).Select(step => new StepChip(step.Name(), StatusOf(step, state)))];

    private static string StatusOf(VisitStep step, VisitState state)
    {
        if (state.Skipped.ContainsKey(step))
            return "skipped";
        if (state.Current == step)
            return "now";
        if (state.Stale.Contains(step))
            return "stale";
        (Conformity? verdict, bool measured) = step switch
        {
            VisitStep.Survey => (state.Survey?.Spread, state.Survey?.Greatest is not null),
            VisitStep.Centring => (state.Centring?.Verdict, state.Centring?.Offset is not null),
            _ => (state.Legs[step.Name()].State.Spread, state.Legs[step.Name()].Slope is not null),
        };
        return measured && verdict is not null ? SurveyReport.Name(verdict.Verdict) : "open";
    }
}
