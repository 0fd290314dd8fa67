using System.Globalization;
using MarkReader.Alignment.Verdicts;

namespace MarkReader.Trials.Scores;

/// <summary>One row of the table: many machines brought into alignment in one way.</summary>
internal sealed record Row(string Name, IReadOnlyList<TrialResult> Results)
{
    public static string Head { get; } = """
        | machines | done | within 0.5 mm | spread/mm | pulses a leg | turns a leg | survey pulses | worse |
        | --- | --- | --- | --- | --- | --- | --- | --- |
        """;

    public override string ToString() => string.Join(" | ",
    [
        "| " + Name,
        Share(Results.Count(r => r.Unfinished is null)),
        Share(Results.Count(r => r.After.IsWithin)),
        Pair(Results.Select(r => r.After.Spread), "0.00"),
        Pair(Results.SelectMany(r => r.Pulses).Select(p => (double)p), "0"),
        Pair(Results.SelectMany(r => r.Turns).Select(t => (double)t), "0"),
        Results.All(r => r.SurveyPulses == 0) ? "-" : Pair(Results.Select(r => (double)r.SurveyPulses), "0"),
        Results.Count(r => r.After.Spread > r.Before.Spread).ToString(CultureInfo.InvariantCulture) + " |",
    ]);

    /// <summary>Rates of verdicts and of twist, one line each.</summary>
    public IEnumerable<string> Rates()
    {
        foreach (string of in new[] { "leg", "bed" })
        {
            GivenVerdict[] given = [.. Results.SelectMany(r => r.Verdicts).Where(v => v.Of == of)];
            GivenVerdict[] outside = [.. given.Where(v => !v.TrulyWithin)], within = [.. given.Where(v => v.TrulyWithin)];
            yield return $"{Name}, {of}: truly outside {outside.Length}, called within {Part(outside.Count(v => v.Verdict == Verdict.Within), outside.Length)}; truly within {within.Length}, called outside {Part(within.Count(v => v.Verdict == Verdict.Outside), within.Length)}";
        }

        TwistTold[] twists = [.. Results.Select(r => r.Twist).OfType<TwistTold>()];
        TwistTold[] clear = [.. twists.Where(t => Math.Abs(t.True) > 3 * t.Uncertainty)], none = [.. twists.Where(t => Math.Abs(t.True) < 0.2 * t.Uncertainty)];
        yield return $"{Name}, twist: above three times its uncertainty {clear.Length}, told {Part(clear.Count(t => t.Found), clear.Length)}; none (below a fifth of it) {none.Length}, told {Part(none.Count(t => t.Found), none.Length)}";
    }

    private string Share(int count) => Part(count, Results.Count);

    private static string Part(int count, int of) => of == 0 ? "-" : string.Create(CultureInfo.InvariantCulture, $"{100.0 * count / of:0.0} %");

    // Median and 95th percentile.
    private static string Pair(IEnumerable<double> values, string format)
    {
        double[] sorted = [.. values.Order()];
        string At(double part) => sorted[Math.Min(sorted.Length - 1, (int)(part * sorted.Length))].ToString(format, CultureInfo.InvariantCulture);
        return $"{At(0.5)}, {At(0.95)}";
    }
}
