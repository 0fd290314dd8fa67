using MarkReader.Application.Auditing;
using MarkReader.Application.Tests.Support;
using MarkReader.Drawing.Audits;
using MarkReader.Quantities;

namespace MarkReader.Application.Tests.Auditing;

public sealed class AuditChartsTests
{
    [Fact]
    public void Each_kind_has_its_row_and_all_have_theirs()
    {
        AuditChart chart = AuditCharts.Of(AuditOf(Photo("a", 0.01, 0.02), Photo("b", 0.03), Photo("a", 0.1)));
        Assert.Equal(["a", "b"], chart.Kinds.Select(k => k.Name));
        Assert.Equal(["3 of 3", "1 of 1"], chart.Kinds.Select(k => k.Count));
        Assert.Equal([0.01, 0.02, 0.1], chart.Kinds[0].Errors.Select(e => Math.Round(e, 9)));
        Assert.Equal("4 of 4", chart.Overall.Count);
        Assert.Equal(0.5, chart.Overall.Coverage!.Part);
    }

    [Fact]
    public void Sorted_distances_are_set_against_the_medians_of_their_ranks()
    {
        DistanceCurve curve = AuditCharts.Of(AuditOf(Photo("a", 0.03, 0.01, 0.02))).Distances;
        Assert.Equal([1, 4, 9], curve.Points.Select(p => Math.Round(p.Observed, 6)));
        // The median of the least of three: 1 − (1 − p)³ = 1/2, so d² = (2/3)·ln 2.
        Assert.Equal(2 * Math.Log(2) / 3, curve.Points[0].Expected, 1e-6);
        Assert.Equal(3, curve.Band.Count);
        Assert.All(curve.Band, b => Assert.True(b.Low < b.Expected && b.Expected < b.High));
    }

    [Fact]
    public void Of_very_many_kinds_a_hundred_are_drawn_and_the_title_says_so()
    {
        AuditChart chart = AuditCharts.Of(AuditOf([.. Enumerable.Range(0, 120).Select(i => Photo($"k{i:000}", 0.01))]));
        Assert.Equal(100, chart.Kinds.Count);
        Assert.Equal(120, chart.Overall.Errors.Count);
        Assert.Contains("kinds of scene: 120", chart.Title, StringComparison.Ordinal);
        Assert.Contains("first 100", chart.Title, StringComparison.Ordinal);
    }

    private static Audit AuditOf(params AuditedPhoto[] photos) => new(photos, AuditSummary.Of(photos), AuditKind.AllOf(photos));

    private static AuditedPhoto Photo(string kind, params double[] errors)
    {
        CardPoint[] truths = [.. errors.Select((_, i) => new CardPoint(3 * i, 0))];
        return new($"{kind}.jpg", new(truths, null, kind), MarkMatching.Match(truths, [.. errors.Select((e, i) => Some.Mark((3 * i) + e, 0))]), 0, null);
    }
}
