using CsCheck;
using MarkReader.Quantities;
using MarkReader.Rendering.Optics;
using MarkReader.Rendering.Specs;

namespace MarkReader.Rendering.Tests.Optics;

public class CameraTests
{
    private static readonly CameraSpec s_spec = new(4032, 3024, 3000);

    [Fact]
    public void A_card_seen_straight_has_its_centre_in_the_middle_of_the_photo_counted_from_pixel_centres()
    {
        PixelPoint centre = new Camera(s_spec, new(30)).ToPhoto(CardPoint.Origin);
        Assert.Equal(2015.5, centre.X, 9);
        Assert.Equal(1511.5, centre.Y, 9);
    }

    [Fact]
    public void U_runs_right_and_v_runs_up_at_the_stated_scale()
    {
        Camera camera = new(s_spec, new(30));
        PixelVector u = camera.ToPhoto(new(1, 0)) - camera.ToPhoto(CardPoint.Origin);
        PixelVector v = camera.ToPhoto(new(0, 1)) - camera.ToPhoto(CardPoint.Origin);
        Assert.Equal((30.0, 0.0), (Math.Round(u.X, 9), Math.Round(u.Y, 9)));
        Assert.Equal((0.0, -30.0), (Math.Round(v.X, 9), Math.Round(v.Y, 9)));
    }

    [Fact]
    public void A_positive_roll_turns_the_card_counter_clockwise()
    {
        Camera camera = new(s_spec, new(30, RollDegrees: 90));
        PixelVector u = camera.ToPhoto(new(1, 0)) - camera.ToPhoto(CardPoint.Origin);
        Assert.Equal((0.0, -30.0), (Math.Round(u.X, 9), Math.Round(u.Y, 9)));
    }

    [Fact]
    public void Tilt_shortens_the_direction_in_which_the_camera_stands_by_its_cosine()
    {
        Camera camera = new(s_spec, new(30, TiltDegrees: 50, TiltTowardsDegrees: 0));
        const double Small = 1e-4;
        double u = (camera.ToPhoto(new(Small, 0)) - camera.ToPhoto(new(-Small, 0))).Magnitude / (2 * Small);
        double v = (camera.ToPhoto(new(0, Small)) - camera.ToPhoto(new(0, -Small))).Magnitude / (2 * Small);
        Assert.Equal(30 * Math.Cos(50 * Math.PI / 180), u, 4);
        Assert.Equal(30, v, 4);
    }

    [Fact]
    public void The_side_towards_which_the_camera_stands_is_seen_larger()
    {
        Camera camera = new(s_spec, new(30, TiltDegrees: 40, TiltTowardsDegrees: 90));
        double upper = (camera.ToPhoto(new(1, 20)) - camera.ToPhoto(new(-1, 20))).Magnitude;
        double lower = (camera.ToPhoto(new(1, -20)) - camera.ToPhoto(new(-1, -20))).Magnitude;
        Assert.True(upper > 1.05 * lower);
    }

    [Fact]
    public void Barrel_distortion_draws_outer_points_to_the_middle_by_the_polynomial()
    {
        Camera plain = new(s_spec, new(30));
        Camera barrel = new(s_spec with { K1 = -0.1, K2 = 0.02 }, new(30));
        double r = 30 * 30 / 3000.0;
        double expected = 1 + (-0.1 * r * r) + (0.02 * r * r * r * r);
        double straight = plain.ToPhoto(new(30, 0)).X - 2015.5;
        double drawn = barrel.ToPhoto(new(30, 0)).X - 2015.5;
        Assert.Equal(expected, drawn / straight, 9);
    }

    [Fact]
    public void Photo_to_card_undoes_card_to_photo_in_any_pose_with_distortion_and_a_bent_card()
    {
        Gen<(double, double, double, double)> pose = Gen.Select(Gen.Double[8, 50], Gen.Double[0, 55], Gen.Double[0, 360], Gen.Double[-180, 180]);
        Gen<(double, double, double, double)> place = Gen.Select(Gen.Double[0.3, 0.7], Gen.Double[-25, 25], Gen.Double[-25, 25], Gen.Double[-0.003, 0.003]);
        pose.Select(place).Sample((p, q) =>
        {
            Camera camera = new(s_spec with { K1 = -0.12, K2 = 0.015, K3 = 0.002, P1 = 0.0012, P2 = -0.0008, PrincipalX = 12 }, new(p.Item1, p.Item2, p.Item3, p.Item4, q.Item1, 0.5), q.Item4, 20);
            CardPoint point = new(q.Item2, q.Item3);
            return camera.ToCard(camera.ToPhoto(point)).DistanceTo(point) < 1e-6;
        });
    }

    [Fact]
    public void The_card_s_centre_appears_where_the_pose_puts_it()
    {
        Camera camera = new(s_spec with { K1 = -0.1 }, new(20, 35, 120, 77, 0.25, 0.7));
        PixelPoint centre = camera.ToPhoto(CardPoint.Origin);
        Assert.Equal((0.25 * 4032) - 0.5, centre.X, 6);
        Assert.Equal((0.7 * 3024) - 0.5, centre.Y, 6);
    }
}
