using MarkReader.Drawing.Overlays;
using MarkReader.Drawing.Tests.Support;
using MarkReader.Quantities;

namespace MarkReader.Drawing.Tests.Overlays;

/// <summary>What is drawn lies in the card's plane: taken back through the homography it is the plain figure.</summary>
public sealed class PerspectiveTests
{
    private static readonly PlaneView s_view = PlaneView.Of(Scenes.Photo, Scenes.Pose);
    private static readonly OverlayScene s_scene = Scenes.Aiming();
    private static readonly OverlayContent.Aiming s_aiming = (OverlayContent.Aiming)s_scene.Content;
    private static readonly OverlayDrawing s_drawing = OverlayComposer.Compose(s_scene, OverlayView.Crop);

    [Fact]
    public void The_near_mark_is_ringed_by_a_circle_of_the_card()
    {
        CardPoint[] ring = Back(s_drawing.Lines("near").Single(l => l.Points.Count > 10));
        Assert.All(ring, p => Assert.Equal(0.65 * 2.4, p.DistanceTo(Scenes.Near.Point), 1e-6));
    }

    [Fact]
    public void The_far_mark_is_framed_by_a_square_along_u_and_v()
    {
        OverlayLine[] candidates = [.. s_drawing.Lines("far").Where(l => Back(l).All(p => p.DistanceTo(Scenes.Far.Point) > 1))];
        CardPoint[] square = Back(Assert.Single(candidates));
        Assert.Equal(4, square.Length);
        Assert.All(square, p =>
        {
            Assert.Equal(0.65 * 2.4, Math.Abs(p.U - Scenes.Far.Point.U), 1e-6);
            Assert.Equal(0.65 * 2.4, Math.Abs(p.V - Scenes.Far.Point.V), 1e-6);
        });
    }

    [Fact]
    public void The_region_of_the_aim_point_is_its_95_percent_ellipse()
    {
        MeasuredPoint aim = s_aiming.Aim;
        CardPoint[] outline = Back(s_drawing.Lines("aim-region").Single());
        Assert.True(outline.Length >= 48);
        Assert.All(outline, p => Assert.Equal(Covariance2.ChiSquare95, aim.Covariance.MahalanobisSquared(p - aim.Point), 1e-4));
    }

    [Fact]
    public void The_aim_point_has_a_diamond_and_four_arms_about_it()
    {
        CardPoint aim = s_aiming.Aim.Point;
        OverlayLine[] lines = s_drawing.Lines("aim");
        CardPoint[] diamond = Back(lines.Single(l => l.Closed && Back(l)[0].DistanceTo(aim) > 0.3));
        double r = diamond[0].DistanceTo(aim);
        Assert.Equal(4, diamond.Length);
        Assert.All(diamond, p => Assert.Equal(r, Math.Abs(p.U - aim.U) + Math.Abs(p.V - aim.V), 1e-6));
        OverlayLine[] arms = [.. lines.Where(l => !l.Closed)];
        Assert.Equal(4, arms.Length);
        Assert.All(arms, a => Assert.Equal(r, Back(a)[0].DistanceTo(aim), 1e-6));
    }

    [Fact]
    public void The_line_runs_through_aim_near_and_far_and_beyond_but_not_over_the_symbols()
    {
        CardVector along = Scenes.Far.Point - Scenes.Near.Point;
        CardVector unit = (1 / along.Magnitude) * along;
        (double Place, double Off)[] ends = [.. s_drawing.Lines("line").SelectMany(Back).Select(p => p - Scenes.Near.Point)
            .Select(d => ((d.U * unit.U) + (d.V * unit.V), (d.U * unit.V) - (d.V * unit.U)))];
        Assert.True(ends.Length >= 6, $"{ends.Length} ends");
        Assert.All(ends, e => Assert.Equal(0, e.Off, 1e-6));
        double aim = -0.8 * along.Magnitude;
        Assert.True(ends.Min(e => e.Place) < aim);
        Assert.True(ends.Max(e => e.Place) > along.Magnitude);
        double[] centres = [aim, 0, along.Magnitude];
        Assert.All(centres, c => Assert.All(ends, e => Assert.True(Math.Abs(e.Place - c) > 0.65 * 2.4, $"an end at {e.Place}, a symbol at {c}")));
    }

    [Fact]
    public void The_scale_bar_lies_along_u_with_its_length_and_a_tick_every_millimetre()
    {
        OverlayLine[] lines = s_drawing.Lines("scale");
        CardPoint[] bar = Back(lines[^1]);
        Assert.Equal(2, bar.Length);
        Assert.Equal(10, bar[1].U - bar[0].U, 1e-6);
        Assert.Equal(bar[0].V, bar[1].V, 1e-6);
        CardPoint[][] ticks = [.. lines[..^1].Select(Back)];
        Assert.Equal(11, ticks.Length);
        for (int i = 0; i < ticks.Length; i++)
        {
            Assert.Equal(bar[0].U + i, ticks[i][0].U, 1e-6);
            Assert.Equal(bar[0].U + i, ticks[i][1].U, 1e-6);
            Assert.True(ticks[i][1].V > ticks[i][0].V);
        }

        Assert.Contains(s_drawing.Texts(), t => t is { Part: "scale-label", Text: "10 mm" });
    }

    [Fact]
    public void For_inches_the_scale_bar_is_a_part_of_an_inch_in_its_true_length()
    {
        OverlayDrawing drawing = OverlayComposer.Compose(s_scene with { Inches = true }, OverlayView.Crop);
        OverlayLine[] lines = drawing.Lines("scale");
        CardPoint[] bar = Back(lines[^1]);
        // Half of 25.4 mm.
        Assert.Equal(12.7, bar[1].U - bar[0].U, 1e-6);
        Assert.Equal(9, lines.Length - 1);
        Assert.Contains(drawing.Texts(), t => t is { Part: "scale-label", Text: "1/2 in" });
        Assert.DoesNotContain(drawing.Texts(), t => t.Text == "10 mm");
    }

    [Fact]
    public void The_zones_outline_is_the_zone()
    {
        CardPoint[] corners = Back(s_drawing.Lines("zone").Single());
        Assert.Equal(4, corners.Length);
        Assert.All(corners, p =>
        {
            Assert.Equal(Scenes.Zone / 2, Math.Abs(p.U), 1e-6);
            Assert.Equal(Scenes.Zone / 2, Math.Abs(p.V), 1e-6);
        });
    }

    [Fact]
    public void The_axes_point_along_u_and_v()
    {
        OverlayDrawing drawing = OverlayComposer.Compose(s_scene with { ShowAxes = true }, OverlayView.Crop);
        CardPoint[][] arrows = [.. drawing.Lines("axes").Where(l => l.Points.Count == 2).Select(Back)];
        Assert.Equal(2, arrows.Length);
        CardVector u = arrows[0][1] - arrows[0][0];
        CardVector v = arrows[1][1] - arrows[1][0];
        Assert.True(u.U > 1 && Math.Abs(u.V) < 1e-6);
        Assert.True(v.V > 1 && Math.Abs(v.U) < 1e-6);
        Assert.Equal(["u", "v"], drawing.Texts().Where(t => t.Part == "axes-label").Select(t => t.Text).Order());
    }

    private static CardPoint[] Back(OverlayLine line) => [.. line.Points.Select(s_view.ToCard)];
}
