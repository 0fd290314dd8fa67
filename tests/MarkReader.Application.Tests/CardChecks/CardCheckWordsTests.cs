using MarkReader.Application.CardChecks;

namespace MarkReader.Application.Tests.CardChecks;

public sealed class CardCheckWordsTests
{
    [Theory]
    [InlineData("good", true, "good")]
    [InlineData("good", false, "good in shape")]
    [InlineData("notGood", false, "not good")]
    [InlineData("cannotTell", false, "cannot tell")]
    public void A_list_says_good_in_shape_where_the_size_was_not_judged(string verdict, bool size, string said)
    {
        Assert.Equal(said, CardCheckWords.Short(Report(verdict, size)));
        Assert.StartsWith(said + ":", CardCheckWords.Verdict(Report(verdict, size)).ToString(), StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void The_verdict_itself_names_the_photos_that_it_is_without()
    {
        CardCheckReport one = Report("good", false, "plate: 2.jpg");
        Assert.Equal("good in shape, plate:\u00a02.jpg left out", CardCheckWords.Short(one));
        Assert.StartsWith("Good in shape, plate:\u00a02.jpg left out: because of it", CardCheckWords.Verdict(one).ToString(), StringComparison.Ordinal);
        Assert.Equal("not good, a.jpg, b.jpg and 2 more left out", CardCheckWords.Short(Report("notGood", true, "a.jpg", "b.jpg", "c.jpg", "d.jpg")));
    }

    private static CardCheckReport Report(string verdict, bool size, params string[] leftOut)
    {
        CardErrorReport place = new(0, 0, 0.01, 0.02, [[1e-6, 0], [0, 1e-6]]);
        CardErrorsReport errors = new(verdict, place, 0.002, 20, 0.018, 0.026, 0.01, 0.001, [place]);
        CardTermReport term = new(0.001, 0.001, 0.5, false);
        CheckedRulersReport? rulers = size ? new(40, 40, 40, 40, 0.02, 40, 40, 0.01, 0, 0.001, true) : null;
        return new(
            "phone", new("plate", 60, 30, 40), 0.05, verdict, size, errors, null, term, term, term, term, 0.01, 0.01, 0.01, rulers, [],
            [.. leftOut.Select(name => new CheckedViewReport(name, null, null, null, null, 9, false, true))], [], 0.1);
    }
}
