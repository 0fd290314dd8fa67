using MarkReader.Quantities;

namespace MarkReader.Practice.Machines;

/// <summary>Whether the carriages reach a station.</summary>
internal static class StationChecks
{
    // A place worked out from path lengths may lie beyond the end by rounding.
    private const double Slack = 1e-6;

    public static Failure? Of(PracticeMachine machine, PracticeStation station)
    {
        double x = machine.Stated.LegTwo.Travel.Millimetres, y = machine.Stated.LegOne.Travel.Millimetres;
        if (!Within(station.X.Millimetres, x))
            return PracticeFailures.OutsideTravel("x", station.X.Millimetres, x);
        if (!Within(station.Y.Millimetres, y))
            return PracticeFailures.OutsideTravel("y", station.Y.Millimetres, y);
        double drop = station.Drop.Millimetres;
        return station.Leg == PracticeLeg.Three && drop is not (> 0 and <= PracticeMachine.LongestDrop) ? PracticeFailures.NoDrop(drop) : null;
    }

    private static bool Within(double place, double travel) => place >= -Slack && place <= travel + Slack;
}
