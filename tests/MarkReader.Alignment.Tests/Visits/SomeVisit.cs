using MarkReader.Alignment.Advice;
using MarkReader.Alignment.Frames;
using MarkReader.Alignment.Shims;
using MarkReader.Alignment.Survey;
using MarkReader.Alignment.Visits;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Tests.Visits;

/// <summary>A machine with legs of 80/480 mm (tape at 45°) and 60/560 mm, a bed of 500 by 400 mm, everything to 0.5 mm; and short ways to write its events.</summary>
internal static class SomeVisit
{
    public const double Sigma = 0.05;

    public static VisitSetup Legs { get; } = new([Leg(VisitLeg.One, 80, 480, 45), Leg(VisitLeg.Two, 60, 560, 0)]);

    public static VisitSetup Machine { get; } = Legs with { Bed = new(new Bed(Some.Mm(500), Some.Mm(400)), Some.Mm(0.5)) };

    public static VisitSetup WithAperture { get; } = Machine with { Aperture = new(Some.Point(0, 0, Sigma), Some.Mm(0.5)) };

    public static VisitSetup Whole { get; } = WithAperture with { Legs = [.. Machine.Legs, Leg(VisitLeg.Three, 50, 150, 0)] };

    public static IReadOnlyList<StockItem> Washers { get; } =
        [.. new[] { 0.5, 0.8, 1.0, 1.6 }.Select(t => new StockItem(FormattableString.Invariant($"{t:0.0} mm"), Some.Mm(t), Some.Mm(0.03)))];

    /// <summary>Marks that put both legs within.</summary>
    public static VisitEvent[] Aligned { get; } = [Mark("1", 80, 1, -0.5), Mark("1", 480, 1, -0.5), Mark("2", 60), Mark("2", 560)];

    /// <summary>Both legs, and a survey whose marks agree.</summary>
    public static VisitEvent[] Surveyed { get; } = [.. Aligned, .. Survey()];

    public static VisitLeg Leg(string name, double near, double far, double incidenceDegrees) => new(name, new LegSetup(
        Some.Leg(incidenceDegrees),
        Some.Station(near, 2),
        Some.Station(far, 2),
        Some.Mm(0.5),
        MirrorFrame.AtCorners(FrameCorner.LowerLeft, [new("A", FrameCorner.LowerRight), new("B", FrameCorner.UpperLeft)], 30, 0.7).ValueOrThrow()));

    public static VisitEvent Mark(string leg, double path, double u = 0, double v = 0, double sigma = Sigma) => new VisitEvent.Mark(leg, path, Some.Point(u, v, sigma));

    public static VisitEvent Turn(string leg, string screw, double turns) => new VisitEvent.Turn(leg, screw, turns);

    public static VisitEvent At(BedCorner corner, double u = 0, double v = 0, double sigma = Sigma)
    {
        (Length x, Length y) = Machine.Bed!.Travels.Place(corner);
        return new VisitEvent.Survey(new(x, y, Some.Point(u, v, sigma)));
    }

    /// <summary>A mark at each corner, with these heights.</summary>
    public static VisitEvent[] Survey(double nearLeft = 0, double nearRight = 0, double farLeft = 0, double farRight = 0) =>
        [At(BedCorner.NearLeft, 0, nearLeft), At(BedCorner.NearRight, 0, nearRight), At(BedCorner.FarLeft, 0, farLeft), At(BedCorner.FarRight, 0, farRight)];

    public static VisitAction.Survey Ask(BedCorner corner)
    {
        (Length x, Length y) = Machine.Bed!.Travels.Place(corner);
        return new(x, y);
    }

    public static VisitAdvice Advise(VisitSetup setup, params VisitEvent[] events) => VisitAdviser.Advise(setup, events).ValueOrThrow();

    /// <summary>Every piece of advice until the visit is done or stops, each action answered by the event that it asks for.</summary>
    public static IReadOnlyList<VisitAdvice> Play(VisitSetup setup, IEnumerable<VisitEvent> before, Func<VisitAction, VisitEvent> answer, List<VisitEvent>? events = null)
    {
        events ??= [];
        events.AddRange(before);
        List<VisitAdvice> given = [];
        do
        {
            given.Add(Advise(setup, [.. events]));
            if (given[^1].Action is VisitAction.Done or VisitAction.Stop)
                return given;
            events.Add(answer(given[^1].Action));
        }
        while (given.Count < 300);

        return given;
    }

    /// <summary>The event of an action on a machine without any fault, whose marks all lie at (u, v).</summary>
    public static VisitEvent Faultless(VisitAction action, double u = 0, double v = 0) => action switch
    {
        VisitAction.Fire fire => Mark(fire.Leg, fire.Path, u, v),
        VisitAction.Survey survey => new VisitEvent.Survey(new(survey.X, survey.Y, Some.Point(u, v, Sigma))),
        _ => throw new InvalidOperationException($"{action} on a machine without a fault"),
    };
}
