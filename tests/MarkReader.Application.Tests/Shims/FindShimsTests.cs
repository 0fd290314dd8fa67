using System.Text.Json;
using MarkReader.Application.Reports;
using MarkReader.Application.Shims;
using MarkReader.Quantities;

namespace MarkReader.Application.Tests.Shims;

public sealed class FindShimsTests
{
    [Fact]
    public void Usual_washers_come_near_to_every_height_from_0_2_to_11_mm()
    {
        double[] heights = [.. Enumerable.Range(0, 2161).Select(i => 0.2 + (0.005 * i))];
        Assert.Equal(11, heights[^1], 1e-9);
        Assert.All(heights, h => Assert.True(FindShims.Run(new(h)).ValueOrThrow().Advice.Reached, $"{h} mm"));
    }

    [Fact]
    public void Washers_of_one_thickness_are_one_item()
    {
        Assert.Equal(["washer M2", "washer M2.5 or M3", "washer M4", "washer M5", "washer M6 or M8"], UsualStock.Washers.Select(i => i.Name));
        Assert.Equal([0.3, 0.5, 0.8, 1.0, 1.6], UsualStock.Washers.Select(i => i.Thickness.Millimetres));
    }

    [Fact]
    public void Json_states_the_pieces_their_sum_and_the_stock()
    {
        string json = ReportJson.Write(ShimsReport.From(FindShims.Run(new(1.9, 0.05, StockText.Read("0.3x2,0.8").ValueOrThrow())).ValueOrThrow()));
        using JsonDocument document = JsonDocument.Parse(json);
        JsonElement stack = document.RootElement.GetProperty("stack");
        Assert.Equal(["wanted", "tolerance", "reached", "height", "uncertainty", "difference", "pieces", "parts"], stack.EnumerateObject().Select(p => p.Name));
        Assert.True(stack.GetProperty("reached").GetBoolean());
        Assert.Equal(1.9, stack.GetProperty("height").GetDouble());
        Assert.Equal(0, stack.GetProperty("difference").GetDouble());
        Assert.Equal(3, stack.GetProperty("pieces").GetInt32());
        Assert.Equal([("0.8 mm", 2), ("0.3 mm", 1)], stack.GetProperty("parts").EnumerateArray().Select(p => (p.GetProperty("name").GetString()!, p.GetProperty("count").GetInt32())));
        Assert.Equal([2, null], document.RootElement.GetProperty("stock").EnumerateArray().Select(i => i.GetProperty("count").ValueKind == JsonValueKind.Null ? (int?)null : i.GetProperty("count").GetInt32()));
    }

    [Theory]
    [InlineData(-1, 0.1, "1.0", "SHIM_HEIGHT_INVALID")]
    [InlineData(double.NaN, 0.1, "1.0", "SHIM_HEIGHT_INVALID")]
    [InlineData(1, double.PositiveInfinity, "1.0", "SHIM_TOLERANCE_INVALID")]
    [InlineData(1, 0.1, "", "SHIM_STOCK_EMPTY")]
    [InlineData(1, 0.1, "0.001", "SHIM_THICKNESS_INVALID")]
    [InlineData(1, 0.1, "-0.5", "SHIM_THICKNESS_INVALID")]
    [InlineData(1, 0.1, "0.5x20000", "SHIM_COUNT_INVALID")]
    [InlineData(1, 0.1, "0.5x0", "SHIM_COUNT_INVALID")]
    public void What_no_stack_can_be_searched_for_is_refused(double height, double tolerance, string stock, string code)
    {
        Assert.False(FindShims.Run(new(height, tolerance, StockText.Read(stock).ValueOrThrow())).TryGet(out _, out Failure? failure));
        Assert.Equal(code, failure.Code.Name);
    }
}
