using MarkReader.Practice.Beams;
using MarkReader.Practice.Machines;
using MarkReader.Practice.Truth;
using MarkReader.Quantities;

namespace MarkReader.Practice.Tests.Beams;

public sealed class LaserTubeTests
{
    /// <summary>Supports 150 and 900 mm from mirror one: by similar triangles the beam rises to h·(1 + (150 + L)/750) at path L.</summary>
    [Theory]
    [InlineData(TubeEnd.Front, 1 + (230 / 750.0), 1 + (630 / 750.0))]
    [InlineData(TubeEnd.Rear, -230 / 750.0, -630 / 750.0)]
    public void Raising_one_end_swings_the_beam_about_the_other_support(TubeEnd end, double near, double far)
    {
        PracticeMachine machine = Some.Straight().RaiseTube(end, Some.Mm(1.5)).ValueOrThrow();
        Assert.Equal(1.5 * near, machine.TrueMark(Some.One(0)).ValueOrThrow().Place.V, 1e-10);
        Assert.Equal(1.5 * far, machine.TrueMark(Some.One(400)).ValueOrThrow().Place.V, 1e-10);
        Assert.Equal(0, machine.TrueMark(Some.One(400)).ValueOrThrow().Place.U, 1e-10);
    }

    [Fact]
    public void Raising_both_ends_lifts_the_beam_everywhere()
    {
        PracticeMachine machine = Some.Straight().RaiseTube(TubeEnd.Front, Some.Mm(1.5)).ValueOrThrow().RaiseTube(TubeEnd.Rear, Some.Mm(1.5)).ValueOrThrow();
        Assert.Equal(1.5, machine.TrueMark(Some.Two(500, 400)).ValueOrThrow().Place.V, 1e-12);
        Assert.Equal(0, machine.BedSpread().ValueOrThrow().Greatest.Millimetres, 1e-12);
    }

    [Fact]
    public void The_tube_is_not_raised_beyond_reason_and_needs_two_supports_apart()
    {
        Assert.False(Some.Straight().RaiseTube(TubeEnd.Front, Some.Mm(21)).TryGet(out _, out Failure? failure));
        Assert.Equal(PracticeFailures.TubeAtItsEnd, failure.Code);
        TubeSupport front = new(Some.Mm(150), Length.Zero, Length.Zero);
        Assert.Throws<ArgumentOutOfRangeException>(() => new LaserTube(front, front));
    }
}
