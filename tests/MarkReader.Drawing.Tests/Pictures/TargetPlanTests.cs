using MarkReader.Drawing.Pictures;
using MarkReader.Quantities;

namespace MarkReader.Drawing.Tests.Pictures;

public sealed class TargetPlanTests
{
    private const string Black = "#101010";

    /// <summary>Semi-axes are √(5.991·λ), λ the eigenvalues of the covariance (JCGM 102:2011, 6.5.2): here mean ± √(half difference² + uv²).</summary>
    [Fact]
    public void The_aim_point_s_ellipse_has_the_axes_of_its_covariance()
    {
        TargetPlan plan = SomePictures.Target;
        Covariance2 c = plan.Aim!.Covariance;
        double mean = (c.Uu + c.Vv) / 2, half = Math.Sqrt(Math.Pow((c.Uu - c.Vv) / 2, 2) + (c.Uv * c.Uv));
        PixelPoint centre = plan.Plane.Place(plan.Aim.Point);

        double[] radii = [.. Ellipse(plan).Select(p => p.DistanceTo(centre))];

        Assert.Equal(plan.Plane.PixelsPerMm * Math.Sqrt(5.991465 * (mean + half)), radii.Max(), 0.01);
        Assert.Equal(plan.Plane.PixelsPerMm * Math.Sqrt(5.991465 * (mean - half)), radii.Min(), 0.01);
        // uv is above zero: the longer axis leans to the upper right.
        PixelPoint farthest = Ellipse(plan).MaxBy(p => p.DistanceTo(centre));
        Assert.True((farthest.X - centre.X) * (farthest.Y - centre.Y) < 0);
    }

    [Fact]
    public void The_arrow_leads_from_the_moving_mark_to_where_the_next_should_lie()
    {
        TargetPlan plan = SomePictures.Target;
        (PixelPoint from, PixelPoint to) = (plan.Plane.Place(plan.Moving!.Value), plan.Plane.Place(SomePictures.Expected.Point));
        Assert.Contains(Lines(plan), l => Same(l, from, to));
    }

    [Fact]
    public void Without_a_next_mark_it_leads_to_the_aim_point_and_at_two_places_to_both()
    {
        TargetPlan aiming = SomePictures.Target with { Expected = [] };
        Assert.Contains(Lines(aiming), l => Same(l, aiming.Plane.Place(aiming.Moving!.Value), aiming.Plane.Place(SomePictures.Aim.Point)));
        MeasuredPoint other = new(new(3.6, 0.9), Covariance2.Isotropic(0.2));
        TargetPlan open = SomePictures.Target with { Expected = [SomePictures.Expected, other] };
        Assert.All(open.Expected, e => Assert.Contains(Lines(open), l => Same(l, open.Plane.Place(open.Moving!.Value), open.Plane.Place(e.Point))));
    }

    [Fact]
    public void It_tells_how_far_the_mark_has_come_and_numbers_every_mark()
    {
        IReadOnlyList<string> words = DrawnPicture.Of(SomePictures.Target).Words;
        Assert.Contains("2.38 mm to go, 3.85 mm at first", words);
        Assert.All(["1", "2", "3", "near", "far", "aim, 95 %", "next mark, 95 %", "tolerance"], w => Assert.Contains(w, words));
    }

    [Fact]
    public void An_early_mark_far_off_does_not_make_the_last_ones_small()
    {
        PlannedMark first = new(1, MarkRole.Far, new(new(9, 9), Covariance2.Isotropic(0.05)), false);
        TargetPlan plan = new("", [first, new(2, MarkRole.Far, new(new(0.1, 0), Covariance2.Isotropic(0.05)), true)]) { Aim = new(new(0, 0), Covariance2.Isotropic(0.05)) };
        Assert.True(plan.Plane.PixelsPerMm > 200);
    }

    [Fact]
    public void A_target_without_anything_is_an_empty_grid() => Assert.Contains("0", DrawnPicture.Of(new TargetPlan("Target", [])).Words);

    private static IReadOnlyList<PixelPoint> Ellipse(TargetPlan plan) => DrawnPicture.Of(plan).Outlines(Black).Single(o => o.Count > 70);

    private static IEnumerable<IReadOnlyList<PixelPoint>> Lines(TargetPlan plan) => DrawnPicture.Of(plan).Outlines(Black).Where(o => o.Count == 2);

    private static bool Same(IReadOnlyList<PixelPoint> line, PixelPoint from, PixelPoint to) => line[0].DistanceTo(from) < 0.01 && line[1].DistanceTo(to) < 0.01;
}
