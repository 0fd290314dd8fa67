using CsCheck;
using MarkReader.Alignment.Frames;
using MarkReader.Alignment.Legs;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Tests.Frames;

/// <summary>The frame's beam against the rules that follow from r = k − 2(k·n)n: 2α, 2·cos θ·α, 2·d·sin θ.</summary>
public sealed class FoldedBeamTests
{
    // Contacts on the axes: the pivot left of the middle line, so that A tilts about the upright axis and B about the level one.
    private static MirrorFrame Frame(double incidenceDegrees = 45) =>
        MirrorFrame.Of([new(null, -20, -20), new("A", 20, -20), new("B", -20, 20)], 0.7).ValueOrThrow()
            .WithIncidence(Angle.FromDegrees(incidenceDegrees)).ValueOrThrow();

    /// <summary>About the normal of the plane of incidence the beam turns by exactly 2α: 20.000000000 mrad for 10 mrad.</summary>
    [Theory]
    [InlineData(1, 2.000000000)]
    [InlineData(10, 20.000000000)]
    public void A_tilt_in_the_plane_of_incidence_turns_the_beam_by_twice_as_much(double tilt, double turned)
    {
        BeamLine line = FoldedBeam.Of(Frame(), [0, 40 * Math.Tan(tilt / 1000), 0], FoldSide.Left);
        Assert.Equal(-turned, 1000 * Math.Atan(line.Sx), 1e-9);
        Assert.Equal(0, line.Sy, 1e-12);
    }

    /// <summary>About the axis in the face and the plane of incidence: 2·asin(sin α/√2) = 14.142017771 mrad for 10 mrad.</summary>
    [Theory]
    [InlineData(1, 1.414213445)]
    [InlineData(10, 14.142017771)]
    public void A_tilt_out_of_the_plane_of_incidence_turns_the_beam_by_about_root_2_as_much(double tilt, double turned)
    {
        BeamLine line = FoldedBeam.Of(Frame(), [0, 0, 40 * Math.Tan(tilt / 1000)], FoldSide.Left);
        double along = 1 / Math.Sqrt(1 + (line.Sx * line.Sx) + (line.Sy * line.Sy));
        Assert.Equal(turned, 1000 * Math.Acos(along), 1e-6);
        Assert.Equal(-0.014141192834 * tilt / 10, line.Sy * along, 2e-6);
    }

    [Theory]
    [InlineData(30, 1.732051)]
    [InlineData(45, 1.414214)]
    [InlineData(60, 1.000000)]
    public void Out_of_the_plane_the_factor_is_twice_the_cosine_of_the_incidence(double incidence, double factor)
    {
        BeamLine line = FoldedBeam.Of(Frame(incidence), [0, 0, 40e-5], FoldSide.Left);
        Assert.Equal(factor, Math.Abs(line.Sy) / 1e-5, 1e-4);
        Assert.Equal(2, Math.Abs(FoldedBeam.Of(Frame(incidence), [0, 40e-5, 0], FoldSide.Left).Sx) / 1e-5, 1e-3);
    }

    [Theory]
    [InlineData(30, 1.000000)]
    [InlineData(45, 1.414214)]
    [InlineData(60, 1.732051)]
    public void All_screws_alike_shift_the_beam_by_twice_the_sine_of_the_incidence(double incidence, double factor)
    {
        BeamLine left = FoldedBeam.Of(Frame(incidence), [0.1, 0.1, 0.1], FoldSide.Left), right = FoldedBeam.Of(Frame(incidence), [0.1, 0.1, 0.1], FoldSide.Right);
        Assert.Equal(0.1 * factor, Math.Abs(left.X0), 1e-7);
        Assert.Equal(-left.X0, right.X0, 1e-12);
        Assert.Equal((0, 0, 0), (Math.Round(left.Sx, 12), Math.Round(left.Sy, 12), Math.Round(left.Y0, 12)));
    }

    /// <summary>M4 at 40 mm, one turn: the beam turns by 34.996428 mrad, 35.010722 mm at 1000 mm.</summary>
    [Fact]
    public void A_full_turn_walks_the_mark_by_35_mm_at_a_metre()
    {
        BeamLine line = FoldedBeam.Of(Frame(), [0, 0.7, 0], FoldSide.Left);
        Assert.Equal(34.996428, 1000 * Math.Atan(Math.Abs(line.Sx)), 1e-6);
        Assert.Equal(35.010722, 1000 * Math.Abs(line.Sx), 1e-6);
    }

    /// <summary>A frame that pivots at the mirror's edge, d from the reflecting point in the plane of incidence: k = ±d/√2.</summary>
    [Theory]
    [InlineData(15)]
    [InlineData(8)]
    public void An_edge_pivot_gives_a_pivot_offset_of_its_distance_over_root_2(double edge)
    {
        MirrorFrame frame = MirrorFrame.AtCorners(FrameCorner.LowerLeft, Screws, 2 * edge, 0.7).ValueOrThrow() with { Fold = FoldSide.Left };
        Assert.Equal(edge / Math.Sqrt(2), Math.Abs(ScrewGeometry.Of(frame)[0].PivotOffset), 1e-4);
        Assert.Equal(0, ScrewGeometry.Of(frame)[1].PivotOffset, 1e-6);
    }

    [Fact]
    public void The_usual_frame_gives_47_and_33_mrad_per_turn_on_axes_of_their_own()
    {
        IReadOnlyList<ScrewGeometry> screws = ScrewGeometry.Of(MirrorFrame.AtCorners(FrameCorner.LowerLeft, Screws, 30, 0.7).ValueOrThrow());
        Assert.Equal(["A", "B"], screws.Select(s => s.Screw));
        Assert.Equal((-46.67, 0, 0, -33.00), (Math.Round(screws[0].SlopeU, 2), Math.Round(screws[0].SlopeV, 6) + 0, Math.Round(screws[1].SlopeU, 6) + 0, Math.Round(screws[1].SlopeV, 2)));
    }

    [Fact]
    public void The_fold_s_side_and_the_face_s_distance_do_not_change_the_slope() =>
        Gen.Select(Gen.Double[-0.3, 0.3], Gen.Double[-0.3, 0.3], Gen.Double[-10, 10]).Sample((a, b, face) =>
        {
            BeamLine left = FoldedBeam.Of(Frame(), [0, a, b], FoldSide.Left), right = FoldedBeam.Of(Frame() with { FaceDistance = face }, [0, a, b], FoldSide.Right);
            // In the plane exactly; a large tilt out of it has a small part in the plane whose side follows the fold.
            return Math.Abs(left.Sy - right.Sy) < 1e-9 + (2 * Math.Abs(left.Sx * left.Sy)) && Math.Abs(left.Sx - right.Sx) < 1e-9 + (3 * left.Sy * left.Sy);
        });

    private static ScrewCorner[] Screws => [new("A", FrameCorner.LowerRight), new("B", FrameCorner.UpperLeft)];
}
