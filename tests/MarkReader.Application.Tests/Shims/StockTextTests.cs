using MarkReader.Alignment.Shims;
using MarkReader.Application.Shims;
using MarkReader.Quantities;

namespace MarkReader.Application.Tests.Shims;

public sealed class StockTextTests
{
    [Theory]
    [InlineData("0.5,0.8x3,1.0,1.6", "0.5 0.8*3 1 1.6")]
    [InlineData(" 0.5, 0.8 x3 , 1.0 ", "0.5 0.8*3 1")]
    [InlineData("0.5 0.8×3 1.25", "0.5 0.8*3 1.25")]
    [InlineData("0,5; 0,8 X 3;1,015", "0.5 0.8*3 1.015")]
    [InlineData("0.5;0.8*3;", "0.5 0.8*3")]
    [InlineData("1,2", "1 2")]
    [InlineData("2x0", "2*0")]
    [InlineData("", "")]
    public void Thicknesses_and_counts_are_read_as_people_write_them(string text, string items) =>
        Assert.Equal(items, string.Join(" ", StockText.Read(text).ValueOrThrow().Items.Select(i => FormattableString.Invariant($"{i.Thickness.Millimetres}{(i.Count is { } n ? $"*{n}" : "")}"))));

    [Theory]
    [InlineData("0,5")]
    [InlineData("0,5,0,8x3")]
    [InlineData("1,5 2,5")]
    [InlineData("1 2,5")]
    [InlineData("1,0")]
    public void A_comma_that_may_stand_before_decimals_is_refused_in_both_readings(string text)
    {
        Assert.False(StockText.Read(text).TryGet(out _, out Failure? failure));
        Assert.Equal("SHIM_STOCK_UNREADABLE", failure.Code.Name);
        Assert.Contains("two ways", failure.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("thick")]
    [InlineData("0.8x")]
    [InlineData("x3")]
    [InlineData("0.8x3x2")]
    [InlineData("0.8x1.5")]
    [InlineData("0.8 mm")]
    [InlineData("nan")]
    [InlineData("1e999")]
    [InlineData("0.8x9999999")]
    public void Anything_else_is_refused(string text)
    {
        Assert.False(StockText.Read(text).TryGet(out _, out Failure? failure));
        Assert.Equal("SHIM_STOCK_UNREADABLE", failure.Code.Name);
    }

    [Fact]
    public void A_thickness_of_a_standard_washer_is_as_uncertain_as_that_washer_and_others_as_a_calliper_or_foil()
    {
        IReadOnlyList<StockItem> items = StockText.Read("1.6 2.0 0.1").ValueOrThrow().Items;
        Assert.Equal(3, items.Count);
        Assert.Equal(0.2 / Math.Sqrt(3), items[0].Uncertainty.Millimetres, 1e-12);
        Assert.Equal(0.05 / Math.Sqrt(3), items[1].Uncertainty.Millimetres, 1e-12);
        Assert.Equal(0.01 / Math.Sqrt(3), items[2].Uncertainty.Millimetres, 1e-12);
    }
}
