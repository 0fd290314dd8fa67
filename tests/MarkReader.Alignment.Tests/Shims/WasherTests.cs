using MarkReader.Alignment.Shims;

namespace MarkReader.Alignment.Tests.Shims;

/// <summary>ISO 7089, grade A.</summary>
public sealed class WasherTests
{
    [Theory]
    [InlineData("M2", 2.2, 5, 0.3, 0.35, 0.029)]
    [InlineData("M2.5", 2.7, 6, 0.5, 0.55, 0.029)]
    [InlineData("M3", 3.2, 7, 0.5, 0.55, 0.029)]
    [InlineData("M4", 4.3, 9, 0.8, 0.9, 0.058)]
    [InlineData("M5", 5.3, 10, 1.0, 1.1, 0.058)]
    [InlineData("M6", 6.4, 12, 1.6, 1.8, 0.115)]
    [InlineData("M8", 8.4, 16, 1.6, 1.8, 0.115)]
    public void Washers_are_those_of_the_standard(string size, double hole, double outer, double thickness, double thickest, double uncertainty)
    {
        Washer washer = Iso7089.Washers.Single(w => w.Size == size);
        Assert.Equal(hole, washer.Hole.Millimetres);
        Assert.Equal(outer, washer.Outer.Millimetres);
        Assert.Equal(thickness, washer.Thickness.Millimetres);
        Assert.Equal(thickest, washer.Thickest.Millimetres);
        Assert.Equal(uncertainty, washer.Uncertainty.Millimetres, 0.0005);
    }

    [Fact]
    public void A_washer_in_stock_keeps_thickness_and_uncertainty()
    {
        StockItem item = Iso7089.Washers[3].InStock(4);
        Assert.Equal(("washer M4", 0.8, 4), (item.Name, item.Thickness.Millimetres, item.Count));
        Assert.Equal(0.1 / Math.Sqrt(3), item.Uncertainty.Millimetres, 1e-12);
    }
}
