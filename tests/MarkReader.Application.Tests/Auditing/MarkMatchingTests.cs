using MarkReader.Application.Auditing;
using MarkReader.Application.Tests.Support;
using MarkReader.Quantities;

namespace MarkReader.Application.Tests.Auditing;

public sealed class MarkMatchingTests
{
    [Fact]
    public void Each_mark_belongs_to_the_nearest_truth_and_to_one_only()
    {
        CardPoint[] truths = [new(0, 0), new(0.8, 0), new(5, 5)];
        IReadOnlyList<MatchedMark> matched = MarkMatching.Match(truths, [Some.Mark(0.5, 0), Some.Mark(0.75, 0), Some.Mark(-6, 0)]);
        Assert.Equal(2, matched.Count);
        Assert.Equal((new CardPoint(0, 0), 0.5), (matched[0].Truth, matched[0].Error.U));
        Assert.Equal(new CardPoint(0.8, 0), matched[1].Truth);
        Assert.Equal(-0.05, matched[1].Error.U, 1e-12);
    }

    [Fact]
    public void A_mark_a_millimetre_off_belongs_to_none()
    {
        Assert.Empty(MarkMatching.Match([new(0, 0)], [Some.Mark(1.01, 0)]));
        Assert.Single(MarkMatching.Match([new(0, 0)], [Some.Mark(0.99, 0)]));
    }

    [Theory]
    [InlineData(2.44, true)]
    [InlineData(2.45, false)]
    public void The_region_of_95_percent_ends_at_2_4477_standard_deviations(double sigmas, bool covered) =>
        Assert.Equal(covered, Assert.Single(MarkMatching.Match([new(0, 0)], [Some.Mark(sigmas * 0.01, 0, 0.01)])).Covered);
}
