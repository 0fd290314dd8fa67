using CsCheck;
using MarkReader.Cameras.Boards;
using MarkReader.Cameras.CardChecks;
using MarkReader.Cameras.Tests.Support;
using MarkReader.Quantities;

namespace MarkReader.Cameras.Tests.CardChecks;

public sealed class FlatReadingTests
{
    private static readonly PrintedSection[] s_sections = PrintedSection.Of(new SimulatedCard(1, new()).Views);
    private static readonly Dictionary<int, double> s_none = [];

    [Fact]
    public void A_flat_print_that_is_stretched_and_skewed_is_read_as_if_it_were_as_drawn() =>
        Gen.Select(Gen.Double[-0.02, 0.02], Gen.Double[-0.02, 0.02], Gen.Double[0.98, 1.02], Gen.Double[0, 40], Gen.Double[0, 360], Gen.Double[-13, 13]).Sample((stretch, skew, scale, tilt, towards, u) =>
        {
            BoardShape shape = new BoardShape(stretch, 0, 0, 0, 0) { Skew = skew };
            CardPoint drawn = new(u, 5), lies = shape.OnPaper(new(scale * drawn.U, scale * drawn.V));

            CardPoint read = Reading(tilt, towards).View(shape, scale, s_none, [lies]).Read[0];

            Assert.InRange(read.DistanceTo(drawn), 0, 1e-7);
        });

    // Seen from straight above at a distance D, a place at height z is moved outwards by r·z/D: of a bowl z = b·r² what no change of scale takes up is b·r³/D.
    [Fact]
    public void A_bowl_moves_marks_by_the_third_power_of_their_distance_from_the_middle()
    {
        const double B = 1e-5, D = 110;
        double coefficient = B * BoardShape.Reach * BoardShape.Reach;
        CardPoint[] places = [new(6, 0), new(12, 0)];

        FlatView view = Reading(0, 0).View(new(0, coefficient, 0, coefficient, 0), 1, s_none, places);

        double near = view.Read[0].U - 6, far = view.Read[1].U - 12;
        double cubic = ((far / 12) - (near / 6)) / ((12 * 12) - (6 * 6));
        Assert.Equal(B / D, cubic, B / D * 0.02);
        Assert.True(near < 0, "the edges round the zone stand out more than the marks within");
    }

    [Fact]
    public void A_fault_of_one_edge_moves_readings_as_its_derivative_says() => Gen.Select(Gen.Int[0, 31], Gen.Double[0, 30], Gen.Double[0, 360]).Sample((group, tilt, towards) =>
    {
        BoardShape shape = new(0.002, 1, -0.5, 0.3, 0);
        CardPoint[] places = [new(-9, 4)];
        FlatReading reading = Reading(tilt, towards);
        FlatView view = reading.View(shape, 1, s_none, places);

        CardVector by = view.ByFault(group, view.ByElements(view.Read[0]));

        const double Step = 0.005;
        CardVector moved = 1 / (2 * Step) * (reading.View(shape, 1, new Dictionary<int, double> { [group] = Step }, places).Read[0] - reading.View(shape, 1, new Dictionary<int, double> { [group] = -Step }, places).Read[0]);
        Assert.InRange((by - moved).Magnitude, 0, 2e-4);
        Assert.InRange(by.Magnitude, 1e-6, 1);
    });

    private static FlatReading Reading(double tilt, double towards) => new(s_sections, SimulatedCard.Half, new(Angle.FromDegrees(tilt), Angle.FromDegrees(towards), Length.FromMillimetres(110)));
}
