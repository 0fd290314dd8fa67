using MarkReader.Alignment.Estimates;
using MarkReader.Alignment.Legs;
using MarkReader.Alignment.Screws;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Advice;

/// <summary>Checks of a leg and its events. Each returns the first thing that is wrong, or null.</summary>
internal static class LegSetupChecks
{
    /// <summary>Most events and different stations of one leg.</summary>
    public const int MostEvents = 1000, MostStations = 40;

    /// <summary>Farthest mark, mm, and most turns of a screw at once.</summary>
    public const double FarthestMark = 300, MostTurns = 20;

    public static Failure? Setup(LegSetup setup) =>
        LegChecks.NearAndFar(setup.Near.Path.Millimetres, setup.Far.Path.Millimetres, setup.Near.PathUncertainty.Millimetres)
        ?? LegChecks.All(setup.Leg, [setup.Near, setup.Far])
        ?? InputChecks.Lengths(setup.Tolerance.Millimetres, (0.001, 100), AdviceFailures.ToleranceInvalid, "the tolerance on the spread", $"give what the aperture leaves to the beam, {InputChecks.Mm(0.5)} on common machines")
        ?? InputChecks.Lengths(setup.TargetRadius.Millimetres, (1, 200), AdviceFailures.TargetRadiusInvalid, "the target's radius", "give the distance from the card's origin at which a mark is still on the target")
        ?? Habits(setup.Habits)
        ?? KnownResponseChecks.All(setup.Frame.Screws, setup.Known);

    public static Failure? Events(LegModel model, IReadOnlyList<LegEvent> events)
    {
        if (events.Count > MostEvents)
            return new(AdviceFailures.TooManyEvents, $"the leg has {events.Count} events", $"give at most {MostEvents}; begin a new visit");
        if (events.OfType<LegEvent.Mark>().Select(m => m.Path).Distinct().Count() > MostStations)
            return new(AdviceFailures.TooManyStations, $"the leg has marks at more than {MostStations} path lengths", "fire at a few stations and give marks of one station the same path length");
        return events.Select((e, i) => Event(model, e, $"{new SaidEvent(i + 1)} of the leg")).FirstOrDefault(f => f is not null);
    }

    /// <param name="which">How a message calls the event.</param>
    public static Failure? Event(LegModel model, LegEvent e, Wording which) => e switch
    {
        LegEvent.Turn turn when model.IndexOf(turn.Screw) < 0 =>
            new(AdviceFailures.ScrewUnknown, $"{which} turns a screw that its frame does not have", $"the frame's screws are {string.Join(", ", model.Screws.Select(s => s.Screw))}"),
        LegEvent.Turn turn when !(Math.Abs(turn.Turns) <= MostTurns) =>
            new(AdviceFailures.TurnsInvalid, $"{which} turns a screw by {InputChecks.Text(turn.Turns)} turns", "give turns of the knob between -20 and 20, clockwise positive"),
        LegEvent.Mark mark => Mark(mark, which),
        _ => null,
    };

    private static Failure? Mark(LegEvent.Mark mark, Wording which)
    {
        if (!(mark.Path >= LegChecks.ShortestPath && mark.Path <= LegChecks.LongestPath))
            return new(AdviceFailures.MarkInvalid, $"{which} is a mark at the path length {InputChecks.Mm(mark.Path)}", $"give the path length of its station, between {InputChecks.Mm(LegChecks.ShortestPath)} and 20 m");
        if (!(Math.Abs(mark.At.Point.U) <= FarthestMark && Math.Abs(mark.At.Point.V) <= FarthestMark))
            return new(AdviceFailures.MarkInvalid, $"{which} is a mark at ({InputChecks.Bare(mark.At.Point.U)}, {InputChecks.Bare(mark.At.Point.V)}) {Wording.Unit}", $"give u and v in the card frame, at most {InputChecks.Mm(FarthestMark)} from its origin");
        Covariance2 c = mark.At.Covariance;
        return c.Determinant > 1e-16 && c.Uu <= 2500 && c.Vv <= 2500
            ? null
            : new(AdviceFailures.MarkUncertaintyInvalid, $"the uncertainty of the mark in {which} is not between {InputChecks.Bare(0.0001)} and {InputChecks.Mm(50)}", $"give every mark its standard uncertainty, {InputChecks.Mm(0.05)} when it was measured on a good photo");
    }

    private static Failure? Habits(ScrewHabits h)
    {
        Failure? Habit(double value, double least, double most, string what) =>
            InputChecks.Between(value, (least, most), AdviceFailures.HabitInvalid, what, "leave it out to use the usual value");
        return Habit(h.Arm, 0.01, 1, "the relative uncertainty of the lever arms")
            ?? Habit(h.Axis.Degrees, 0.1, 45, "the uncertainty of the screws' axes in degrees")
            ?? Habit(h.HandSetting, 0.0005, 0.1, "the uncertainty of a turn set by hand in turns")
            ?? Habit(h.Backlash.Degrees, 0, 90, "the backlash in degrees")
            ?? Habit(h.BacklashUncertainty.Degrees, 0.1, 90, "the backlash's uncertainty in degrees");
    }
}
