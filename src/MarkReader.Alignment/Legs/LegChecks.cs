using System.Globalization;
using MarkReader.Alignment.Texts;
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

    private static Wording Measure => AlignmentTexts.Word("legChecks.measureFromSourceMirrorReflecting", Wording.Unit);

    private static Wording PivotHint => AlignmentTexts.Word("legChecks.giveWhenNotKnownSeldom", Mm(15));

    /// <summary>The path lengths of the near and the far station and the standard uncertainty of each, mm.</summary>
    public static Failure? NearAndFar(double near, double far, double uncertainty)
    {
        if ((Path(near, "near") ?? Path(far, "far")) is { } wrong)
            return wrong;
        if (near == far)
            return new(LegFailures.PathsEqual, AlignmentTexts.Word("legChecks.nearAndFarPathLength", Mm(near)), AlignmentTexts.Get("legChecks.moveCarriageBetweenPulsesAnd"));
        if (near > far)
            return new(LegFailures.PathsSwapped, AlignmentTexts.Word("legChecks.nearPathLengthLongerThan", Mm(near), Mm(far)), AlignmentTexts.Get("legChecks.giveShorterLengthAsNear"));
        return PathUncertainty(uncertainty) ?? Travel(far - near, Math.Sqrt(2) * uncertainty);
    }

    /// <summary>The incidence angle of the target, degrees.</summary>
    public static Failure? Incidence(double degrees) => double.IsFinite(degrees) && Math.Abs(degrees) < LargestIncidence
        ? null
        : new(LegFailures.IncidenceInvalid, AlignmentTexts.Word("legChecks.incidenceAngleNotBetweenAnd", Text(degrees)), AlignmentTexts.Get("legChecks.giveForTargetSquareBeam"));

    /// <summary>The pivot offset and its standard uncertainty, mm, for a leg whose shortest path is <paramref name="shortestPath"/> mm.</summary>
    public static Failure? Pivot(double offset, double uncertainty, double shortestPath)
    {
        if (!double.IsFinite(offset) || Math.Abs(offset) > LargestPivotOffset)
            return new(LegFailures.PivotOffsetInvalid, AlignmentTexts.Word("legChecks.pivotOffsetNotBetweenAnd", Mm(offset), Bare(-LargestPivotOffset), Mm(LargestPivotOffset)), PivotHint);
        if (offset + shortestPath <= 0)
            return new(LegFailures.PivotOffsetInvalid, AlignmentTexts.Word("legChecks.pivotOffsetPutsSwingPoint", Mm(offset)), PivotHint);
        return double.IsFinite(uncertainty) && uncertainty >= 0 && uncertainty <= LargestPivotOffset
            ? null
            : new(LegFailures.PivotUncertaintyInvalid, AlignmentTexts.Word("legChecks.pivotOffsetUncertaintyNotBetween", Mm(uncertainty), Mm(LargestPivotOffset)), AlignmentTexts.Word("legChecks.giveStandardUncertaintyInWhen", Wording.Unit));
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
            return new(LegFailures.TooFewStations, AlignmentTexts.Get("legChecks.allMarksComeFromOne"), AlignmentTexts.Get("legChecks.firePulseAtSecondStation"));
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
            return new(LegFailures.PathNotANumber, AlignmentTexts.Word("legChecks.pathLengthNotFiniteNumber", which), Measure);
        if (path < 0)
            return new(LegFailures.PathNegative, AlignmentTexts.Word("legChecks.pathLengthNegative", which, Mm(path)), Measure);
        if (path == 0)
            return new(LegFailures.PathZero, AlignmentTexts.Word("legChecks.pathLengthZero", which), Measure);
        if (path < ShortestPath)
            return new(LegFailures.PathTooShort, AlignmentTexts.Word("legChecks.pathLengthLessThan", which, Mm(ShortestPath)), Measure);
        return path > LongestPath
            ? new(LegFailures.PathTooLong, AlignmentTexts.Word("legChecks.pathLengthMoreThanM", which, Mm(path)), Measure)
            : null;
    }

    private static Failure? PathUncertainty(double uncertainty) => double.IsFinite(uncertainty) && uncertainty >= 0
        ? null
        : new(LegFailures.PathUncertaintyInvalid, AlignmentTexts.Word("legChecks.pathLengthsUncertaintyNotZero", Mm(uncertainty)), AlignmentTexts.Word("legChecks.giveStandardUncertaintyAboutFor", Mm(1)));

    private static Failure? Travel(double travel, double uncertainty)
    {
        if (travel < ShortestTravel)
            return new(LegFailures.TravelTooShort, AlignmentTexts.Word("legChecks.stationsOnlyApart", Mm(travel)), AlignmentTexts.Word("legChecks.useNearlyWholeTravelCarriage", Mm(ShortestTravel)));
        return travel < TravelOverUncertainty * uncertainty
            ? new(LegFailures.TravelUncertain, AlignmentTexts.Word("legChecks.travelKnownOnly", Mm(travel), Mm(uncertainty)), AlignmentTexts.Get("legChecks.useMoreCarriageTravelOr"))
            : null;
    }

    private static double Square(Length length) => length.Millimetres * length.Millimetres;

    private static SaidLength Mm(double value) => new(value);

    private static SaidLength Bare(double value) => new(value, HasUnit: false);

    private static string Text(double value) => value.ToString("0.###", CultureInfo.InvariantCulture);
}
