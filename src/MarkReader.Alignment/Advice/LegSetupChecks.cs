using MarkReader.Alignment.Estimates;
using MarkReader.Alignment.Legs;
using MarkReader.Alignment.Screws;
using MarkReader.Alignment.Texts;
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
        ?? InputChecks.Lengths(setup.Tolerance.Millimetres, (0.001, 100), AdviceFailures.ToleranceInvalid, AlignmentTexts.Get("legSetupChecks.toleranceOnSpread"), AlignmentTexts.Word("legSetupChecks.giveWhatApertureLeavesBeam", InputChecks.Mm(0.5)))
        ?? InputChecks.Lengths(setup.TargetRadius.Millimetres, (1, 200), AdviceFailures.TargetRadiusInvalid, AlignmentTexts.Get("legSetupChecks.targetRadius"), AlignmentTexts.Get("legSetupChecks.giveDistanceFromCardOrigin"))
        ?? Habits(setup.Habits)
        ?? KnownResponseChecks.All(setup.Frame.Screws, setup.Known);

    public static Failure? Events(LegModel model, IReadOnlyList<LegEvent> events)
    {
        if (events.Count > MostEvents)
            return new(AdviceFailures.TooManyEvents, AlignmentTexts.Word("legSetupChecks.legHasEvents", events.Count), AlignmentTexts.Word("legSetupChecks.giveAtMostBeginNew", MostEvents));
        if (events.OfType<LegEvent.Mark>().Select(m => m.Path).Distinct().Count() > MostStations)
            return new(AdviceFailures.TooManyStations, AlignmentTexts.Word("legSetupChecks.legHasMarksAtMore", MostStations), AlignmentTexts.Get("legSetupChecks.fireAtFewStationsAnd"));
        return events.Select((e, i) => Event(model, e, AlignmentTexts.Word("legSetupChecks.leg", new SaidEvent(i + 1)))).FirstOrDefault(f => f is not null);
    }

    /// <param name="which">How a message calls the event.</param>
    public static Failure? Event(LegModel model, LegEvent e, Wording which) => e switch
    {
        LegEvent.Turn turn when model.IndexOf(turn.Screw) < 0 =>
            new(AdviceFailures.ScrewUnknown, AlignmentTexts.Word("legSetupChecks.turnsScrewThatFrameDoes", which), AlignmentTexts.Word("legSetupChecks.frameScrews", string.Join(", ", model.Screws.Select(s => s.Screw)))),
        LegEvent.Turn turn when !(Math.Abs(turn.Turns) <= MostTurns) =>
            new(AdviceFailures.TurnsInvalid, AlignmentTexts.Word("legSetupChecks.turnsScrewByTurns", which, InputChecks.Text(turn.Turns)), AlignmentTexts.Get("legSetupChecks.giveTurnsKnobBetweenAnd")),
        LegEvent.Mark mark => Mark(mark, which),
        _ => null,
    };

    private static Failure? Mark(LegEvent.Mark mark, Wording which)
    {
        if (!(mark.Path >= LegChecks.ShortestPath && mark.Path <= LegChecks.LongestPath))
            return new(AdviceFailures.MarkInvalid, AlignmentTexts.Word("legSetupChecks.markAtPathLength", which, InputChecks.Mm(mark.Path)), AlignmentTexts.Word("legSetupChecks.givePathLengthStationBetween", InputChecks.Mm(LegChecks.ShortestPath)));
        if (!(Math.Abs(mark.At.Point.U) <= FarthestMark && Math.Abs(mark.At.Point.V) <= FarthestMark))
            return new(AdviceFailures.MarkInvalid, AlignmentTexts.Word("legSetupChecks.markAt", which, InputChecks.Bare(mark.At.Point.U), InputChecks.Bare(mark.At.Point.V), Wording.Unit), AlignmentTexts.Word("legSetupChecks.giveUAndVIn", InputChecks.Mm(FarthestMark)));
        Covariance2 c = mark.At.Covariance;
        return c.Determinant > 1e-16 && c.Uu <= 2500 && c.Vv <= 2500
            ? null
            : new(AdviceFailures.MarkUncertaintyInvalid, AlignmentTexts.Word("legSetupChecks.uncertaintyMarkInNotBetween", which, InputChecks.Bare(0.0001), InputChecks.Mm(50)), AlignmentTexts.Word("legSetupChecks.giveEveryMarkStandardUncertainty", InputChecks.Mm(0.05)));
    }

    private static Failure? Habits(ScrewHabits h)
    {
        Failure? Habit(double value, double least, double most, string what) =>
            InputChecks.Between(value, (least, most), AdviceFailures.HabitInvalid, what, AlignmentTexts.Get("legSetupChecks.leaveOutUseUsualValue"));
        return Habit(h.Arm, 0.01, 1, AlignmentTexts.Get("legSetupChecks.relativeUncertaintyLeverArms"))
            ?? Habit(h.Axis.Degrees, 0.1, 45, AlignmentTexts.Get("legSetupChecks.uncertaintyScrewsAxesInDegrees"))
            ?? Habit(h.HandSetting, 0.0005, 0.1, AlignmentTexts.Get("legSetupChecks.uncertaintyTurnSetByHand"))
            ?? Habit(h.Backlash.Degrees, 0, 90, AlignmentTexts.Get("legSetupChecks.backlashInDegrees"))
            ?? Habit(h.BacklashUncertainty.Degrees, 0.1, 90, AlignmentTexts.Get("legSetupChecks.backlashUncertaintyInDegrees"));
    }
}
