using MarkReader.Cards;
using MarkReader.Quantities;
using MarkReader.Rendering.Optics;
using MarkReader.Rendering.Specs;
using MarkReader.Rendering.Tests.Support;

namespace MarkReader.Rendering.Tests;

public class PrintedEdgeTests
{
    [Theory]
    [InlineData(0, 1)]
    [InlineData(0.04, 1)]
    [InlineData(0, 0.98)]
    public void A_marker_s_border_stands_where_the_card_says_with_spread_and_print_scale(double spread, double scale)
    {
        SceneSpec spec = PlainScene.Straight();
        spec = spec with { Card = spec.Card! with { InkSpread = spread, PrintScaleU = scale, PrintScaleV = scale } };
        double[,] grey = PlainScene.Grey(spec);
        Camera projection = SceneRenderer.CameraOf(spec);
        CardMarker marker = CardKinds.Find("plate")!.Markers[0];

        // A row through the border's lowest cell, from paper into ink: the edge stands where the missing light says.
        double v = scale * (marker.Centre.V - (marker.Side / 2) + (marker.Side / 12));
        double u = (scale * (marker.Centre.U - (marker.Side / 2))) - spread;
        PixelPoint expected = projection.ToPhoto(new(u, v));
        int row = (int)Math.Round(expected.Y);
        int from = (int)expected.X - 8;
        double[] light = [.. Enumerable.Range(from, 17).Select(x => Linear(grey[row, x]))];
        double edge = from - 0.5 + light.Sum(l => (l - light[^1]) / (light[0] - light[^1]));
        Assert.Equal(expected.X, edge, 0.01);
    }

    private static double Linear(double display) => display <= 0.04045 ? display / 12.92 : Math.Pow((display + 0.055) / 1.055, 2.4);
}
