namespace MarkReader.Quantities.Tests;

public sealed class OutcomeTests
{
    private static readonly Failure s_failure = new(new("NO_MARK", FailureKind.NotMeasurable), "no mark was found", "fire a pulse");

    [Fact]
    public void A_value_comes_back_as_a_value()
    {
        Outcome<string> outcome = "done";
        Assert.True(outcome.TryGet(out string? value, out Failure? failure));
        Assert.Equal("done", value);
        Assert.Null(failure);
        Assert.Equal("done", outcome.ValueOrThrow());
    }

    [Fact]
    public void A_failure_comes_back_as_a_failure_and_prints_as_one_line()
    {
        Outcome<string> outcome = s_failure;
        Assert.False(outcome.TryGet(out string? value, out Failure? failure));
        Assert.Null(value);
        Assert.Same(s_failure, failure);
        Assert.Equal("NO_MARK: no mark was found; fire a pulse", failure.ToString());
        Assert.Contains("NO_MARK", Assert.Throws<InvalidOperationException>(outcome.ValueOrThrow).Message, StringComparison.Ordinal);
    }
}
