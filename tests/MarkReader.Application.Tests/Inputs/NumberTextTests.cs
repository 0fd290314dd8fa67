using MarkReader.Application.Inputs;

namespace MarkReader.Application.Tests.Inputs;

public sealed class NumberTextTests
{
    [Theory]
    [InlineData("80", 80)]
    [InlineData(" 80.5 ", 80.5)]
    [InlineData("80,5", 80.5)]
    [InlineData("0,125", 0.125)]
    [InlineData("-3", -3)]
    [InlineData("−3.5", -3.5)]
    [InlineData(".5", 0.5)]
    [InlineData("1e3", 1000)]
    [InlineData("NaN", double.NaN)]
    [InlineData("-inf", double.NegativeInfinity)]
    [InlineData("Infinity", double.PositiveInfinity)]
    public void Numbers_are_read_as_people_write_them(string text, double value) =>
        Assert.Equal(value, NumberText.Read(text).ValueOrThrow().Value);

    [Theory]
    [InlineData("")]
    [InlineData("eighty")]
    [InlineData("1,000")]
    [InlineData("1.000,5")]
    [InlineData("80 mm")]
    [InlineData("0x10")]
    [InlineData("--5")]
    public void What_is_no_number_or_two_is_refused(string text)
    {
        Assert.False(NumberText.Read(text).TryGet(out _, out var failure));
        Assert.Equal("NUMBER_UNREADABLE", failure.Code.Name);
    }
}
