using CsCheck;
using MarkReader.Drawing.Labels;
using MarkReader.Drawing.Overlays;
using MarkReader.Quantities;

namespace MarkReader.Drawing.Tests.Labels;

public sealed class LabelPlacesTests
{
    private static readonly PixelBox s_room = new(0, 0, 360, 270);

    private static readonly Gen<LabelSize> s_sizes = Gen.Select(Gen.Double[8, 120], Gen.Double[10, 34]).Select(s => new LabelSize(s.Item1, s.Item2));

    // Signs anywhere, also at the border, and as many as lie on one spot.
    [Fact]
    public void Labels_cover_neither_each_other_nor_signs_nor_the_border() =>
        Gen.Select(Point(0, 360, 0, 270).Array[1, 8], s_sizes.Array[8], Gen.Double[0.2, 40]).Sample((anchors, sizes, spread) =>
        {
            // Drawn together about the first.
            PixelPoint[] signs = [.. anchors.Select(a => s_room.Nearest(anchors[0] + (spread / 360 * (a - anchors[0]))))];
            (PixelBox[] boxes, bool covered) = Placed(signs, sizes, 9);

            Assert.Equal(signs.Length, boxes.Length);
            Assert.False(covered);
        });

    [Fact]
    public void The_same_signs_get_the_same_places() =>
        Gen.Select(Point(0, 360, 0, 270).Array[6], s_sizes.Array[6]).Sample((signs, sizes) => Assert.Equal(Placed(signs, sizes, 7).Boxes, Placed(signs, sizes, 7).Boxes), iter: 20);

    [Fact]
    public void A_label_beside_its_sign_has_no_line_and_one_that_had_to_move_has_one_from_the_signs_border()
    {
        LabelPlaces places = new(s_room, 1, Angle.Zero);
        PixelPoint sign = new(100, 100);
        places.Keep(sign, 9);
        Assert.Null(Take(places, sign).Leader);

        places = new(s_room, 1, Angle.Zero);
        places.Keep(new PixelBox(60, 60, 140, 140));
        LabelPlace moved = Take(places, sign);

        Assert.NotNull(moved.Leader);
        Assert.Equal(9, moved.Leader.Value.From.DistanceTo(sign), 1e-9);
        Assert.Equal(moved.Box.Nearest(sign), moved.Leader.Value.To);
        Assert.False(new PixelBox(60, 60, 140, 140).Meets(moved.Box));

        static LabelPlace Take(LabelPlaces places, PixelPoint sign) => places.Take([new(40, 14)], sign, 9, leader: true)!;
    }

    [Fact]
    public void Where_the_whole_label_has_no_room_the_shorter_one_is_taken_and_where_none_has_nothing()
    {
        LabelPlaces places = new(s_room, 1, Angle.Zero);

        Assert.Equal(1, places.Take([new(361, 30), new(50, 14)], new(180, 130), 9, leader: true)!.Size);
        Assert.Null(places.Take([new(361, 30)], new(180, 130), 9, leader: true));
    }

    // A sign that fills the picture is covered by its name rather than left without one.
    [Fact]
    public void A_sign_as_large_as_the_picture_still_has_its_label()
    {
        LabelPlaces places = new(s_room, 1, Angle.Zero);
        places.Keep(new PixelPoint(180, 130), 300);

        Assert.True(s_room.Holds(places.Take([new(40, 14)], new(180, 130), 300, leader: true)!.Box));
    }

    private static (PixelBox[] Boxes, bool Covered) Placed(PixelPoint[] signs, LabelSize[] sizes, double radius)
    {
        LabelPlaces places = new(s_room, 1, Angle.Zero);
        foreach (PixelPoint sign in signs)
            places.Keep(sign, radius);
        PixelBox[] boxes = [.. signs.Select((s, i) => places.Take([sizes[i]], s, radius, leader: true)).OfType<LabelPlace>().Select(p => p.Box)];
        bool covered = boxes.Any(b => !s_room.Holds(b) || signs.Any(s => b.Nearest(s).DistanceTo(s) < radius))
            || boxes.Where((b, i) => boxes.Take(i).Any(b.Meets)).Any();
        return (boxes, covered);
    }

    private static Gen<PixelPoint> Point(double left, double right, double top, double bottom) =>
        Gen.Select(Gen.Double[left, right], Gen.Double[top, bottom]).Select(p => new PixelPoint(p.Item1, p.Item2));
}
