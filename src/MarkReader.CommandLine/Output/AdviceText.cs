using System.Globalization;
using MarkReader.Alignment.Verdicts;
using MarkReader.Alignment.Visits;
using MarkReader.Application.Advising;
using MarkReader.Quantities;
using static MarkReader.Quantities.Texts<MarkReader.CommandLine.Output.OutputTexts>;

namespace MarkReader.CommandLine.Output;

/// <summary>A visit's next action for people.</summary>
internal static class AdviceText
{
    public static string Of(VisitAdvice advice)
    {
        IReadOnlyList<string>[] parts =
        [
            [ActionWords.Of(advice.Action), advice.Reason, .. Expected(advice)],
            [State(advice.State)],
            [.. Words.Of(advice.Warnings)],
            ActionWords.NeedsCautions(advice.Action) ? [Words.Cautions] : [],
        ];
        return string.Join(Environment.NewLine + Environment.NewLine, parts.Where(p => p.Count > 0).Select(p => string.Join(Environment.NewLine, p)));
    }

    private static IEnumerable<string> Expected(VisitAdvice advice)
    {
        if (advice.Expected is not { } expected)
            yield break;
        yield return Say("advice.nextMarkExpectedAt", Place(expected.Mark));
        foreach (var branch in expected.Branches)
            yield return string.Create(CultureInfo.InvariantCulture, $"  {100 * branch.Probability:0} %: {Place(branch.Mark)}");
    }

    private static string Place(MeasuredPoint mark) =>
        Say("advice.uVMm95", Words.Place(mark.Point.U), Words.Place(mark.Point.V), Words.Region95(mark.Covariance));

    /// <summary>Verdicts, slopes and aim points as a table.</summary>
    public static string State(VisitState state)
    {
        Table table = new(Get("advice.state"), Get("advice.verdict"), "u", "v", Get("advice.unit"));
        foreach ((string name, VisitLegState leg) in state.Legs.OrderBy(l => l.Key, StringComparer.Ordinal))
        {
            table.Add(Say("advice.legSlope", name), Verdict(leg.State.Spread), leg.Slope is { } s ? Two(s.U) : "-", leg.Slope is { } t ? Two(t.V) : "-", "mrad");
            if (leg.State.Aim is { } aim)
                table.Add(Say("advice.legAimPoint", name), "", Two(aim.Point.U), Two(aim.Point.V), "mm");
        }

        if (state.Survey is { } survey)
            table.Add(Say("advice.bedSpreadOfMarks", survey.Marks), Verdict(survey.Spread), survey.Greatest is { } greatest ? Words.Fixed(greatest.Millimetres, 2) : "-", "", "mm");
        if (state.Centring is { } centring)
            table.Add(Get("advice.steadyMarkFromCentre"), Verdict(centring.Verdict), centring.Offset is { } o ? Two(o.Vector.U) : "-", centring.Offset is { } p ? Two(p.Vector.V) : "-", "mm");
        table.Add(Get("advice.machine"), Verdict(state.Machine), "", "", "");
        return table.ToString();
    }

    private static string Verdict(Conformity conformity) => Words.Of(conformity);

    private static string Two(double value) => value.ToString("+0.00;-0.00;0.00", CultureInfo.InvariantCulture);
}
