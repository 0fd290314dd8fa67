namespace MarkReader.Cards.Tests;

public sealed class MarkerPatternTests
{
    [Fact]
    public void Rows_are_read_from_the_top_and_digits_from_the_left_with_a_black_border_round_them()
    {
        MarkerPattern pattern = new(2, ["10", "01"]);

        Assert.Equal(4, pattern.CellsWithBorder);
        Assert.True(pattern.IsWhite(1, 1));
        Assert.False(pattern.IsWhite(2, 1));
        Assert.False(pattern.IsWhite(1, 2));
        Assert.True(pattern.IsWhite(2, 2));
        Assert.False(pattern.IsWhite(0, 1));
        Assert.False(pattern.IsWhite(3, 2));
    }

    [Theory]
    [InlineData("10")]
    [InlineData("10", "0")]
    [InlineData("10", "0x")]
    public void A_pattern_that_is_not_square_or_not_of_digits_is_refused(params string[] rows) =>
        Assert.Throws<ArgumentException>(() => new MarkerPattern(2, rows));
}
