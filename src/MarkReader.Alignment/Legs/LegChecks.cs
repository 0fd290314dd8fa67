using System.Globalization;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Legs;

/// <summary>Checks of a leg's numbers as a user gives them (mm, degrees). Each returns the first thing that is wrong, or null.</summary>
public static class LegChecks
{
    /// <summary>Longest path taken for real, mm. Large machines have legs of a few metres.</summary>
    public const double LongestPath = 20_000;

    /// <summary>Shortest path taken for real, mm.</summary>
    public const double ShortestPath = 1;

    /// <summary>Shortest travel from which a slope is worked out, mm.</summary>
    public const double ShortestTravel = 10;

    /// <summary>The travel must be at least this many times its standard uncertainty, else the linear propagation fails.</summary>
    public const double TravelOverUncertainty = 5;

    /// <summary>Largest incidence angle, degrees.</summary>
    public const double LargestIncidence = 80;

    /// <summary>Largest pivot offset, mm. A frame 30 mm wide has about 10 mm.</summary>
    public const double LargestPivotOffset = 200;

    private static readonly Wording s_measure = $"measure from the source mirror's reflecting point to the target along the beam, in {Wording.Unit}";

    private static readonly Wording s_pivot = $"give 0 when it is not known; it is seldom more than {Mm(15)}";

    /// <summary>The path lengths of the near and the far station and the standard uncertainty of each, mm.</summary>
    public static Failure? NearAndFar(double near, double far, double uncertainty)
    {
        if ((Path(near, "near") ?? Path(far, "far")) is { } wrong)
            return wrong;
        if (near == far)
            return new(LegFailures.PathsEqual, $"the near and the far path length are both {Mm(near)}", "move the carriage between the pulses and give both lengths");
        if (near > far)
            return new(LegFailures.PathsSwapped, $"the near path length ({Mm(near)}) is longer than the far one ({Mm(far)}); they look swapped", "give the shorter length as the near one, with its photo");
        return PathUncertainty(uncertainty) ?? Travel(far - near, Math.Sqrt(2) * uncertainty);
    }

    /// <summary>The incidence angle of the target, degrees.</summary>
    public static Failure? Incidence(double degrees) => double.IsFinite(degrees) && Math.Abs(degrees) < LargestIncidence
        ? null
        : new(LegFailures.IncidenceInvalid, $"the incidence angle {Text(degrees)} is not between -80 and 80 degrees", "give 0 for a target square to the beam, 45 for tape on the face of a 45 degree mirror");

    /// <summary>The pivot offset and its standard uncertainty, mm, for a leg whose shortest path is <paramref name="shortestPath"/> mm.</summary>
    public static Failure? Pivot(double offset, double uncertainty, double shortestPath)
    {
        if (!double.IsFinite(offset) || Math.Abs(offset) > LargestPivotOffset)
            return new(LegFailures.PivotOffsetInvalid, $"the pivot offset {Mm(offset)} is not between {Bare(-LargestPivotOffset)} and {Mm(LargestPivotOffset)}", s_pivot);
        if (offset + shortestPath <= 0)
            return new(LegFailures.PivotOffsetInvalid, $"the pivot offset {Mm(offset)} puts the swing point at or beyond the near station", s_pivot);
        return double.IsFinite(uncertainty) && uncertainty >= 0 && uncertainty <= LargestPivotOffset
            ? null
            : new(LegFailures.PivotUncertaintyInvalid, $"the pivot offset's uncertainty {Mm(uncertainty)} is not between 0 and {Mm(LargestPivotOffset)}", $"give a standard uncertainty in {Wording.Unit}, 0 when the offset is to be taken as exact");
    }

    /// <summary>A leg and all its stations.</summary>
    public static Failure? All(Leg leg, IReadOnlyList<Station> stations)
    {
        foreach (Station station in stations)
        {
            if ((Path(station.Path.Millimetres, "station's") ?? PathUncertainty(station.PathUncertainty.Millimetres)) is { } wrong)
                return wrong;
        }

        if (stations.DistinctBy(s => s.Path).Count() < 2)
            return new(LegFailures.TooFewStations, "all marks come from one path length", "fire a pulse at a second station of the carriage");
        Station near = stations.MinBy(s => s.Path)!;
        Station far = stations.MaxBy(s => s.Path)!;
        double uncertainty = Math.Sqrt(Square(near.PathUncertainty) + Square(far.PathUncertainty));
        return Travel((far.Path - near.Path).Millimetres, uncertainty)
            ?? Incidence(leg.Incidence.Degrees)
            ?? Pivot(leg.PivotOffset.Millimetres, leg.PivotUncertainty.Millimetres, near.Path.Millimetres);
    }

    private static Failure? Path(double path, string which)
    {
        if (!double.IsFinite(path))
            return new(LegFailures.PathNotANumber, $"the {which} path length is not a finite number", s_measure);
        if (path < 0)
            return new(LegFailures.PathNegative, $"the {which} path length is negative ({Mm(path)})", s_measure);
        if (path == 0)
            return new(LegFailures.PathZero, $"the {which} path length is zero", s_measure);
        if (path < ShortestPath)
            return new(LegFailures.PathTooShort, $"the {which} path length is less than {Mm(ShortestPath)}", s_measure);
        return path > LongestPath
            ? new(LegFailures.PathTooLong, $"the {which} path length {Mm(path)} is more than 20 m", s_measure)
            : null;
    }

    private static Failure? PathUncertainty(double uncertainty) => double.IsFinite(uncertainty) && uncertainty >= 0
        ? null
        : new(LegFailures.PathUncertaintyInvalid, $"the path lengths' uncertainty {Mm(uncertainty)} is not zero or more", $"give a standard uncertainty, about {Mm(1)} for a length read off a tape measure");

    private static Failure? Travel(double travel, double uncertainty)
    {
        if (travel < ShortestTravel)
            return new(LegFailures.TravelTooShort, $"the stations are only {Mm(travel)} apart", $"use nearly the whole travel of the carriage, and at least {Mm(ShortestTravel)}");
        return travel < TravelOverUncertainty * uncertainty
            ? new(LegFailures.TravelUncertain, $"the travel of {Mm(travel)} is known to {Mm(uncertainty)} only", "use more of the carriage's travel, or measure the path lengths better")
            : null;
    }

    private static double Square(Length length) => length.Millimetres * length.Millimetres;

    private static SaidLength Mm(double value) => new(value);

    private static SaidLength Bare(double value) => new(value, HasUnit: false);

    private static string Text(double value) => value.ToString("0.###", CultureInfo.InvariantCulture);
}
