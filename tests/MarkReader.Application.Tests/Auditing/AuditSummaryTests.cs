using MarkReader.Application.Auditing;
using MarkReader.Application.Tests.Support;
using MarkReader.Imaging.Marks;
using MarkReader.Quantities;

namespace MarkReader.Application.Tests.Auditing;

public sealed class AuditSummaryTests
{
    /// <summary>Four truths along u with marks 1, 2, 3 and 8 standard deviations (0.01 mm) off, one truth without a mark, and a mark without a truth.</summary>
    private static readonly AuditedPhoto s_mixed = Photo(
        "tilt", [new(-8, 0), new(-4, 0), new(0, 0), new(4, 0), new(8, 0)], [Some.Mark(-7.99, 0), Some.Mark(-3.98, 0), Some.Mark(0, 0.03), Some.Mark(4, -0.08), Some.Mark(0, 9)]);

    private static readonly AuditedPhoto s_exact = Photo("tidy", [new(1, 1)], [Some.Mark(1, 1)]);

    [Fact]
    public void Rates_errors_and_distances_are_those_of_the_marks()
    {
        AuditSummary s = AuditSummary.Of([s_mixed]);
        Assert.Equal((5, 4, 1, 1), (s.Truths, s.Found, s.Missed, s.False));
        Assert.Equal((0.8, 0.2), (s.FoundRate, s.FalseRate));
        Assert.Equal(0.01 * Math.Sqrt((1 + 4 + 9 + 64) / 4.0), s.Rms!.Value, 1e-12);
        Assert.Equal(0.025, s.Median!.Value, 1e-12);
        Assert.Equal(0.08, s.Max!.Value, 1e-12);
        Assert.Equal(0.01 * Math.Sqrt(2), s.StatedRms!.Value, 1e-12);
        Assert.Equal(2.5, s.MedianMahalanobis!.Value, 1e-9);
        Assert.Equal(8, s.MaxMahalanobis!.Value, 1e-9);
        Assert.Equal(1, s.BeyondThrice);
    }

    /// <summary>The interval of 2 in 4: scipy.stats.binomtest(2, 4).proportion_ci(method="exact"), SciPy 1.10.1.</summary>
    [Fact]
    public void The_coverage_comes_with_its_exact_interval()
    {
        AuditSummary s = AuditSummary.Of([s_mixed]);
        Assert.Equal(0.5, s.Coverage);
        Assert.Equal(0.067585986488542, s.CoverageLow!.Value, 1e-9);
        Assert.Equal(0.932414013511458, s.CoverageHigh!.Value, 1e-9);
    }

    [Theory]
    [InlineData(7.33, 0)]
    [InlineData(7.35, 1)]
    public void Beyond_three_times_the_region_begins_at_7_343_standard_deviations(double sigmas, int beyond) =>
        Assert.Equal(beyond, AuditSummary.Of([Photo("tidy", [new(0, 0)], [Some.Mark(sigmas * 0.01, 0)])]).BeyondThrice);

    [Fact]
    public void Kinds_come_in_order_of_name_with_the_figures_of_their_own_photos()
    {
        IReadOnlyList<AuditKind> kinds = AuditKind.AllOf([s_mixed, s_exact, s_mixed]);
        Assert.Equal(["tidy", "tilt"], kinds.Select(k => k.Kind));
        Assert.Equal([1, 2], kinds.Select(k => k.Photos));
        Assert.Equal([1, 8], kinds.Select(k => k.Found));
        Assert.Equal(0, kinds[0].Rms);
        Assert.Equal(AuditSummary.Of([s_mixed, s_mixed]).Rms, kinds[1].Rms);
    }

    [Fact]
    public void Without_marks_there_are_counts_and_no_figures()
    {
        AuditSummary s = AuditSummary.Of([Photo("noMark", [], [])]);
        Assert.Equal((1, 0, 0, 0, 0), (s.Photos, s.Truths, s.Found, s.False, s.BeyondThrice));
        Assert.Equal([null, null, null, null, null, null, null], (double?[])[s.FoundRate, s.FalseRate, s.Rms, s.Coverage, s.CoverageLow, s.MedianMahalanobis, s.MaxMahalanobis]);
    }

    private static AuditedPhoto Photo(string kind, CardPoint[] truths, Mark[] marks)
    {
        IReadOnlyList<MatchedMark> found = MarkMatching.Match(truths, marks);
        return new($"{kind}.jpg", new(truths, null, kind), found, marks.Length - found.Count, null);
    }
}
