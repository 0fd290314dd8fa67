using System.Globalization;
using MarkReader.Alignment.Verdicts;
using MarkReader.Alignment.Visits;
using MarkReader.Application.Advising;
using MarkReader.Quantities;

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
        yield return $"next mark: expected at {Place(expected.Mark)}";
        foreach (var branch in expected.Branches)
            yield return string.Create(CultureInfo.InvariantCulture, $"  {100 * branch.Probability:0} %: {Place(branch.Mark)}");
    }

    private static string Place(MeasuredPoint mark) =>
        $"u {Words.Place(mark.Point.U)}, v {Words.Place(mark.Point.V)} mm; 95 % region {Words.Region95(mark.Covariance)} mm (half-lengths)";

    /// <summary>Verdicts, slopes and aim points as a table.</summary>
    public static string State(VisitState state)
    {
        Table table = new("state", "verdict", "u", "v", "unit");
        foreach ((string name, VisitLegState leg) in state.Legs.OrderBy(l => l.Key, StringComparer.Ordinal))
        {
            table.Add($"leg {name}: slope", Verdict(leg.State.Spread), leg.Slope is { } s ? Two(s.U) : "-", leg.Slope is { } t ? Two(t.V) : "-", "mrad");
            if (leg.State.Aim is { } aim)
                table.Add($"leg {name}: aim point", "", Two(aim.Point.U), Two(aim.Point.V), "mm");
        }

        if (state.Survey is { } survey)
            table.Add($"bed: spread of {survey.Marks} marks", Verdict(survey.Spread), survey.Greatest is { } greatest ? Words.Fixed(greatest.Millimetres, 2) : "-", "", "mm");
        if (state.Centring is { } centring)
            table.Add("steady mark from centre", Verdict(centring.Verdict), centring.Offset is { } o ? Two(o.Vector.U) : "-", centring.Offset is { } p ? Two(p.Vector.V) : "-", "mm");
        table.Add("machine", Verdict(state.Machine), "", "", "");
        return table.ToString();
    }

    private static string Verdict(Conformity conformity) => conformity.Verdict.ToString().ToLowerInvariant();

    private static string Two(double value) => value.ToString("+0.00;-0.00;0.00", CultureInfo.InvariantCulture);
}
