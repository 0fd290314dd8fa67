using CsCheck;
using MarkReader.Practice.Frames;
using MarkReader.Practice.Machines;
using MarkReader.Practice.Truth;
using MarkReader.Quantities;

namespace MarkReader.Practice.Tests.Machines;

/// <summary>Where the beams of two settings of a screw cross: z = −k, the place that the screw leaves still.</summary>
/// <remarks>
/// The reflected beam is the incoming one's image. A face turned by α about a line behind or before it turns the image by 2α about that line's
/// foot on the face, to first order; the beam stays still where the perpendicular from the foot meets it. A line d to the side: k = ±d/√2.
/// </remarks>
public sealed class PivotOffsetTests
{
    [Theory]
    [InlineData(PracticeLeg.One, -15, 10.6066)]
    [InlineData(PracticeLeg.One, 15, -10.6066)]
    [InlineData(PracticeLeg.Two, -15, 10.6066)]
    [InlineData(PracticeLeg.Two, 15, -10.6066)]
    public void A_screw_opposite_an_edge_pivot_leaves_still_the_place_d_over_root_2_along_the_beam(PracticeLeg leg, double edge, double still) =>
        Assert.Equal(still, Crossing(Machine(leg, edge, 0), leg, "A", 0.02), 0.02);

    [Theory]
    [InlineData(6)]
    [InlineData(-6)]
    public void The_distance_of_the_face_from_its_contacts_does_not_move_that_place(double distance) =>
        Assert.Equal(10.6066, Crossing(Machine(PracticeLeg.One, -15, distance), PracticeLeg.One, "A", 0.02), 0.02);

    [Fact]
    public void The_mark_at_that_place_stays_still_whatever_the_turn() =>
        Gen.Select(Gen.Double[-25, -5], Gen.Double[-10, 10], Gen.Double[-0.3, 0.3].Where(t => Math.Abs(t) > 0.01)).Sample((edge, distance, turns) =>
        {
            PracticeMachine machine = Machine(PracticeLeg.One, edge, distance);
            double still = -edge / Math.Sqrt(2);
            // What remains is of second order in the tilt: the height of the arc on which the contacts' line carries the face.
            double tilt = 0.7 * turns / (2 * -edge), lever = Math.Sqrt((edge * edge) + (distance * distance));
            double Walk(double z) => Across(machine.Turn(PracticeLeg.One, "A", turns).ValueOrThrow(), PracticeLeg.One, z)
                - Across(machine, PracticeLeg.One, z);
            return Math.Abs(Walk(still)) < 4 * lever * tilt * tilt;
        });

    [Fact]
    public void A_pivot_at_the_reflecting_point_leaves_the_reflecting_point_still() =>
        Gen.Select(Gen.Double[-2, 2], Gen.Double[-2, 2]).Sample((a, b) =>
        {
            PracticeMachine turned = Some.Straight().WithFrame(PracticeLeg.One, Some.CentreFrame())
                .Turn(PracticeLeg.One, "A", a).ValueOrThrow().Turn(PracticeLeg.One, "B", b).ValueOrThrow();
            CardPoint near = turned.TrueMark(Some.One(0)).ValueOrThrow().Place, far = turned.TrueMark(Some.One(400)).ValueOrThrow().Place;
            return (near - ((80.0 / 400) * (far - near))).DistanceTo(CardPoint.Origin) < 1e-10;
        });

    [Fact]
    public void The_screw_above_the_pivot_also_walks_the_beam_sideways_by_root_2_of_its_push_at_the_middle()
    {
        // Contacts 15 mm below the middle: pushing the upper one by h moves the middle forwards by h/2, the beam sideways by √2·h/2.
        PracticeMachine machine = Machine(PracticeLeg.One, -15, 0);
        CardVector walk = machine.Turn(PracticeLeg.One, "B", 0.1).ValueOrThrow().TrueMark(Some.One(0)).ValueOrThrow().Place
            - machine.TrueMark(Some.One(0)).ValueOrThrow().Place;
        Assert.Equal(Math.Sqrt(2) * 0.07 / 2, Math.Abs(walk.U), 1e-3);
        Assert.True(Math.Abs(walk.V) > 0.2);
    }

    [Theory]
    [InlineData(PracticeLeg.One, -15)]
    [InlineData(PracticeLeg.Two, 15)]
    public void Out_of_the_plane_of_incidence_the_beam_swings_about_the_reflecting_point_itself(PracticeLeg leg, double edge) =>
        Assert.Equal(0, Crossing(Machine(leg, edge, 6), leg, "B", 0.02, m => m.V), 0.02);

    /// <summary>A square frame on the leg's source mirror: pivot and screw B on the vertical line at <paramref name="edge"/>, screw A opposite.</summary>
    private static PracticeMachine Machine(PracticeLeg leg, double edge, double faceDistance) => Some.Straight().WithFrame(leg, new ThreeContactFrame(
        Some.Contact(edge, -15), Some.Contact(-edge, -15, Some.Screw("A")), Some.Contact(edge, 15, Some.Screw("B")), Some.Mm(faceDistance)));

    private static double Crossing(PracticeMachine machine, PracticeLeg leg, string screw, double turns, Func<CardPoint, double>? component = null)
    {
        PracticeMachine one = machine.Turn(leg, screw, turns).ValueOrThrow(), other = machine.Turn(leg, screw, -turns).ValueOrThrow();
        double Gap(double z) => Across(one, leg, z, component) - Across(other, leg, z, component);
        return -100 * Gap(0) / (Gap(100) - Gap(0));
    }

    /// <summary>u (or another component) of the beam's line at path z, which may lie before the travel.</summary>
    private static double Across(PracticeMachine machine, PracticeLeg leg, double z, Func<CardPoint, double>? component = null)
    {
        double At(double travel)
        {
            CardPoint mark = machine.TrueMark(leg == PracticeLeg.One ? Some.One(travel) : Some.Two(travel)).ValueOrThrow().Place;
            return component?.Invoke(mark) ?? mark.U;
        }

        double first = leg == PracticeLeg.One ? 80 : 60;
        return At(0) + ((z - first) / 400 * (At(400) - At(0)));
    }
}
