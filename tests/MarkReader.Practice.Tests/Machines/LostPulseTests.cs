using MarkReader.Practice.Beams;
using MarkReader.Practice.Machines;
using MarkReader.Practice.Truth;
using MarkReader.Quantities;

namespace MarkReader.Practice.Tests.Machines;

public sealed class LostPulseTests
{
    /// <summary>The beam is 12 mm too high everywhere; what is too small for that stops it, the first of them by name.</summary>
    [Theory]
    [InlineData(BeamPlace.MirrorOne, "BEAM_LOST_AT_MIRROR_ONE")]
    [InlineData(BeamPlace.MirrorTwo, "BEAM_LOST_AT_MIRROR_TWO")]
    [InlineData(BeamPlace.HeadEntry, "BEAM_LOST_AT_HEAD_ENTRY")]
    [InlineData(BeamPlace.MirrorThree, "BEAM_LOST_AT_MIRROR_THREE")]
    [InlineData(BeamPlace.Lens, "BEAM_LOST_AT_LENS")]
    [InlineData(BeamPlace.Nozzle, "BEAM_LOST_AT_NOZZLE")]
    [InlineData(BeamPlace.Tape, "BEAM_LOST_AT_TAPE")]
    public void A_lost_pulse_says_where(BeamPlace place, string code)
    {
        PracticeMachine machine = With(place, 11.9);
        Assert.False(machine.Fire(Some.Three(50), new(1)).TryGet(out _, out Failure? failure));
        Assert.Equal(code, failure.Code.Name);
        Assert.Equal(PracticeFailures.LostAt(place), failure.Code);
        Assert.Contains(PracticeFailures.Words(place), failure.Message, StringComparison.Ordinal);
        Assert.Contains(place == BeamPlace.MirrorThree ? "16.971 mm" : "12 mm", failure.Message, StringComparison.Ordinal);

        Assert.True(With(place, 12.1).Fire(Some.Three(50), new(1)).TryGet(out _, out _));
    }

    [Fact]
    public void The_first_place_that_the_beam_misses_is_named()
    {
        PracticeMachine machine = High() with { Head = Narrow(Head.Usual, 11), TapeRadius = Some.Mm(11) };
        Assert.False(machine.TrueMark(Some.Three(50)).TryGet(out _, out Failure? failure));
        Assert.Equal(PracticeFailures.LostAt(BeamPlace.HeadEntry), failure.Code);
    }

    [Fact]
    public void A_beam_turned_far_away_is_lost_and_nothing_throws()
    {
        // Turned by 60° the mirror sends the beam away from the rail.
        PracticeMachine machine = Some.Straight().Knock(PracticeLeg.One, Angle.FromDegrees(60), Angle.Zero);
        Assert.False(machine.TrueMark(Some.Two(100, 100)).TryGet(out _, out Failure? failure));
        Assert.StartsWith("BEAM_LOST_AT_", failure.Code.Name, StringComparison.Ordinal);
        Assert.False(machine.BedSpread().TryGet(out _, out _));
        Assert.False(machine.LegSpread(PracticeLeg.One).TryGet(out _, out _));
        Assert.False(machine.TrueSlope(PracticeLeg.One).TryGet(out _, out _));
        Assert.False(machine.PassageAt(BeamPlace.Lens, Some.Three(50)).TryGet(out _, out _));
    }

    [Fact]
    public void A_station_outside_the_travel_is_refused()
    {
        PracticeStation[] outside = [Some.One(-1), Some.One(401), Some.Two(-1), Some.Two(501), Some.Two(0, 401), Some.Three(0), Some.Three(2001), Some.Three(10, x: 501)];
        Assert.All(outside, station =>
        {
            Assert.False(Some.Straight().Fire(station, new(1)).TryGet(out _, out Failure? failure));
            Assert.Equal(PracticeFailures.StationOutsideTravel, failure.Code);
            Assert.False(Some.Straight().PassageAt(BeamPlace.MirrorOne, station).TryGet(out _, out _));
        });
        Assert.True(Some.Straight().Fire(Some.One(400 + 1e-9), new(1)).TryGet(out _, out _));
    }

    private static PracticeMachine High()
    {
        PracticeMachine machine = Some.Straight();
        return machine with
        {
            Tube = machine.Tube.Raise(TubeEnd.Front, Some.Mm(12)).ValueOrThrow().Raise(TubeEnd.Rear, Some.Mm(12)).ValueOrThrow(),
            MirrorOne = machine.MirrorOne with { Radius = Some.Mm(30) },
            MirrorTwo = machine.MirrorTwo with { Radius = Some.Mm(30) },
            MirrorThree = machine.MirrorThree with { Radius = Some.Mm(30) },
            Head = Narrow(Head.Usual, 30),
        };
    }

    private static Head Narrow(Head head, double radius) => head with
    {
        Entry = head.Entry with { Radius = Some.Mm(radius) },
        Lens = head.Lens with { Radius = Some.Mm(radius) },
        Nozzle = head.Nozzle with { Radius = Some.Mm(radius) },
    };

    private static PracticeMachine With(BeamPlace place, double radius)
    {
        PracticeMachine high = High();
        Length r = Some.Mm(radius);
        // Across mirror three the beam lies √2 times as far from the middle, in the plane of incidence.
        return place switch
        {
            BeamPlace.MirrorOne => high with { MirrorOne = high.MirrorOne with { Radius = r } },
            BeamPlace.MirrorTwo => high with { MirrorTwo = high.MirrorTwo with { Radius = r } },
            BeamPlace.HeadEntry => high with { Head = high.Head with { Entry = high.Head.Entry with { Radius = r } } },
            BeamPlace.MirrorThree => high with { MirrorThree = high.MirrorThree with { Radius = Math.Sqrt(2) * r } },
            BeamPlace.Lens => high with { Head = high.Head with { Lens = high.Head.Lens with { Radius = r } } },
            BeamPlace.Nozzle => high with { Head = high.Head with { Nozzle = high.Head.Nozzle with { Radius = r } } },
            _ => high with { TapeRadius = r },
        };
    }
}
