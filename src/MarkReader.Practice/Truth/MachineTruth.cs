using MarkReader.Practice.Geometry;
using MarkReader.Practice.Machines;
using MarkReader.Quantities;

namespace MarkReader.Practice.Truth;

/// <summary>What is true of a practice machine, free of scatter: for scoring advice, never for giving it.</summary>
public static class MachineTruth
{
    /// <summary>The mark that a pulse would leave without any scatter.</summary>
    public static Outcome<BurnMark> TrueMark(this PracticeMachine machine, PracticeStation station) =>
        machine.Burn(station, machine.Tube.Beam(Vector3.Zero), new(0, 0));

    /// <summary>How far the marks of the corner survey lie from each other, over a grid of the bed with <paramref name="side"/> places on a side.</summary>
    /// <param name="side">At least 2, the corners alone; a bent rail needs more.</param>
    public static Outcome<MarkSpread> BedSpread(this PracticeMachine machine, int side = 5)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(side, 2);
        return Spread(
            from j in Enumerable.Range(0, side)
            from i in Enumerable.Range(0, side)
            select machine.TrueMark(PracticeStation.LegTwo(Part(machine.Stated.LegTwo.Travel, i, side), Part(machine.Stated.LegOne.Travel, j, side))));
    }

    /// <summary>How far the beam walks over a leg's travel, across the beam: as marks on tape square to the rail, whatever the incidence of the leg's own tape.</summary>
    /// <param name="leg">Leg 1 or 2.</param>
    /// <param name="gantry">Where the gantry stands; for leg 2.</param>
    /// <param name="stations">Places along the travel, at least 2.</param>
    public static Outcome<MarkSpread> LegSpread(this PracticeMachine machine, PracticeLeg leg, Length gantry = default, int stations = 9)
    {
        ArgumentOutOfRangeException.ThrowIfEqual((int)leg, (int)PracticeLeg.Three, nameof(leg));
        ArgumentOutOfRangeException.ThrowIfLessThan(stations, 2);
        return Spread(Enumerable.Range(0, stations).Select(i => AcrossTheBeam(machine, leg == PracticeLeg.One
            ? PracticeStation.LegOne(Part(machine.Stated.LegOne.Travel, i, stations))
            : PracticeStation.LegTwo(Part(machine.Stated.LegTwo.Travel, i, stations), gantry))));
    }

    /// <summary>The slope of leg 1 or 2 as its marks show it: from the near to the far end of the travel, across the beam, over the true travel.</summary>
    /// <param name="gantry">Where the gantry stands; for leg 2.</param>
    public static Outcome<BeamSlope> TrueSlope(this PracticeMachine machine, PracticeLeg leg, Length gantry = default)
    {
        ArgumentOutOfRangeException.ThrowIfEqual((int)leg, (int)PracticeLeg.Three, nameof(leg));
        (PracticeStation near, PracticeStation far, TruePaths paths) = leg == PracticeLeg.One
            ? (PracticeStation.LegOne(Length.Zero), PracticeStation.LegOne(machine.Stated.LegOne.Travel), machine.LegOnePaths)
            : (PracticeStation.LegTwo(Length.Zero, gantry), PracticeStation.LegTwo(machine.Stated.LegTwo.Travel, gantry), machine.LegTwoPaths);
        if (!AcrossTheBeam(machine, near).TryGet(out BurnMark? first, out Failure? failure) || !AcrossTheBeam(machine, far).TryGet(out BurnMark? last, out failure))
            return failure;
        CardVector walk = (1 / (paths.Far - paths.Near).Millimetres) * (last.Place - first.Place);
        return new BeamSlope(1000 * walk.U, 1000 * walk.V);
    }

    /// <summary>How the beam passes an aperture, a mirror or the tape on its way to a station.</summary>
    public static Outcome<BeamPassage> PassageAt(this PracticeMachine machine, BeamPlace place, PracticeStation station)
    {
        if (StationChecks.Of(machine, station) is { } wrong)
            return wrong;
        IReadOnlyList<Crossing> crossings = BeamTrace.Follow(machine, station, machine.Tube.Beam(Vector3.Zero));
        if (crossings.FirstOrDefault(c => c.Place == place) is not { } crossing)
            return PracticeFailures.Lost(crossings.FirstOrDefault(c => c.At is null)?.Place ?? place, null, 0);
        return crossing.At is { } at
            ? new BeamPassage(at - CardPoint.Origin, machine.Beam.RadiusAfter(Length.FromMillimetres(crossing.Path)), Length.FromMillimetres(crossing.Radius))
            : PracticeFailures.Lost(place, null, crossing.Radius);
    }

    /// <summary>The true mark on tape square to the rail.</summary>
    private static Outcome<BurnMark> AcrossTheBeam(PracticeMachine machine, PracticeStation station) =>
        machine.Burn(station, machine.Tube.Beam(Vector3.Zero), new(0, 0), Angle.Zero);

    private static Outcome<MarkSpread> Spread(IEnumerable<Outcome<BurnMark>> marks)
    {
        List<CardPoint> places = [];
        foreach (Outcome<BurnMark> mark in marks)
        {
            if (!mark.TryGet(out BurnMark? burn, out Failure? failure))
                return failure;
            places.Add(burn.Place);
        }

        return MarkSpread.Of(places);
    }

    private static Length Part(Length travel, int index, int count) => (index / (count - 1.0)) * travel;
}
