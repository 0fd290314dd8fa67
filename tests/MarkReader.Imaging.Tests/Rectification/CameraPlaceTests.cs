using CsCheck;
using MarkReader.Imaging.Rectification;
using MarkReader.Quantities;

namespace MarkReader.Imaging.Tests.Rectification;

public sealed class CameraPlaceTests
{
    private static readonly Gen<CameraPlace> s_place = Gen.Select(Gen.Double[-150, 150], Gen.Double[-150, 150], Gen.Double[80, 400], (u, v, h) => new CameraPlace(new(u, v), h));

    private static readonly Gen<CardPoint> s_point = Gen.Double[-25, 25].Select(Gen.Double[-25, 25], (u, v) => new CardPoint(u, v));

    [Fact]
    public void A_point_seen_on_the_plane_and_lifted_again_is_where_it_was() => Gen.Select(s_place, s_point, Gen.Double[-2, 2]).Sample((place, p, height) =>
        place.AtHeight(place.OnPlane(p, height), height).DistanceTo(p) < 1e-9);

    /// <summary>A point, its place on the plane and the camera lie on one line of sight.</summary>
    [Fact]
    public void Camera_point_and_its_place_on_the_plane_are_in_line() => Gen.Select(s_place, s_point, Gen.Double[-2, 2]).Sample((place, p, height) =>
    {
        CardPoint seen = place.OnPlane(p, height);
        // At the point's height the line from the camera (foot, Height) to the place on the plane (seen, 0) is this far along.
        double t = (place.Height - height) / place.Height;
        return (place.Foot + (t * (seen - place.Foot))).DistanceTo(p) < 1e-9;
    });

    [Fact]
    public void Straight_above_a_point_there_is_no_parallax() =>
        Assert.Equal(new CardPoint(3, 4), new CameraPlace(new(3, 4), 200).OnPlane(new(3, 4), 1.5));

    [Fact]
    public void The_angle_of_sight_is_that_to_the_normal() =>
        Assert.Equal(45, new CameraPlace(new(200, 0), 200).SightAt(CardPoint.Origin).Degrees, 1e-9);
}
