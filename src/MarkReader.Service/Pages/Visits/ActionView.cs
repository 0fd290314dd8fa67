using MarkReader.Alignment.Advice;
using MarkReader.Alignment.Survey;
using MarkReader.Alignment.Visits;
using MarkReader.Application.Reports;
using MarkReader.Quantities;
using MarkReader.Service.Display;
using MarkReader.Service.Texts;
using Microsoft.Extensions.Localization;

namespace MarkReader.Service.Pages.Visits;

/// <summary>The one thing to do now, in words and as a sketch.</summary>
public sealed record ActionView
{
    // A station's path and a corner's place are stated numbers; they come back as they were given.
    private const double Same = 1e-6;

    private ActionView(VisitAction action, string title, string how) => (Action, Title, How) = (action, title, how);

    public VisitAction Action { get; }

    public string Title { get; }

    /// <summary>Where and how; empty when there is nothing to add.</summary>
    public string How { get; }

    public StationSketch? Sketch { get; private init; }

    public bool IsPulse => Action is VisitAction.Fire or VisitAction.Survey;

    /// <summary>Work on mounts or screws; not a pulse, an end or a stop.</summary>
    public bool IsWork => !IsPulse && Action is not (VisitAction.Done or VisitAction.Stop);

    internal static ActionView Of(VisitAction action, VisitSetup setup, IStringLocalizer<VisitTexts> t, Figures f)
    {
        string Corner(BedCorner corner) => t["corner." + SurveyReport.Name(corner)];
        string Mm(Length length) => f.Short(length.Millimetres);
        return action switch
        {
            VisitAction.Fire fire => Pulse(fire, setup, t, f),
            VisitAction.Survey survey => new(action, Survey(survey, setup, t, f), t["how.survey", Mm(survey.X), Mm(survey.Y)])
            {
                Sketch = StationSketch.Of(survey, setup, t),
            },
            VisitAction.Turn turn => Turn(turn, HandTurn.Nearest(turn.Turns, 0), t),
            VisitAction.Shim { Height.Millimetres: < 0 } shim => new(action, t["now.unshim", f.Length(-shim.Height.Millimetres), Corner(shim.Corner)], t["how.shim"]),
            VisitAction.Shim shim => new(action, t["now.shim", f.Length(shim.Height.Millimetres), Corner(shim.Corner)], t["how.shim"]),
            VisitAction.MoveTarget { By.V: 0 } move => new(action, t[move.By.U > 0 ? "now.right" : "now.left", f.Length(Math.Abs(move.By.U))], t["how.move"]),
            VisitAction.MoveTarget { By: { U: 0, V: > 0 } } move => new(action, t["now.up", f.Length(move.By.V)], t["how.move"]),
            VisitAction.MoveTarget move => new(action, t["now.move", f.Signed(move.By.U), f.Signed(move.By.V)], t["how.move"]),
            VisitAction.RaiseTube raise => new(action, t["now.raise", f.Length(raise.Height.Millimetres)], t["how.raise"]),
            VisitAction.Realign { Leg: VisitLeg.Two } realign => new(action, t["now.realign.2", t["end." + SurveyReport.Name(realign.At)].Value], t["how.realign"]),
            VisitAction.Realign realign => new(action, t["now.realign", realign.Leg], t["how.realign"]),
            VisitAction.Done => new(action, t["now.done"], ""),
            _ => new(action, t["now.stop"], t["stop.hint"]),
        };
    }

    private static ActionView Turn(VisitAction.Turn turn, HandTurn hand, IStringLocalizer<VisitTexts> t) => new(
        turn, t["now.turn", turn.Leg, turn.Screw, hand.Advice], t[turn.GoesBeyond ? "how.turnBeyond" : "how.turn"] + (hand.IsFine ? " " + t["how.turnFine"] : ""));

    private static ActionView Pulse(VisitAction.Fire fire, VisitSetup setup, IStringLocalizer<VisitTexts> t, Figures f)
    {
        LegSetup leg = setup.Legs.First(l => l.Name == fire.Leg).Setup;
        string path = f.Short(fire.Path);
        string title = Math.Abs(fire.Path - leg.Near.Path.Millimetres) < Same ? t["now.fire.near", fire.Leg]
            : Math.Abs(fire.Path - leg.Far.Path.Millimetres) < Same ? t["now.fire.far", fire.Leg]
            : t["now.fire.at", fire.Leg, path];
        string how = fire switch
        {
            { Leg: VisitLeg.One } => t["how.leg1", path],
            { Leg: VisitLeg.Two, Gantry: { } gantry } => t["how.leg2.gantry", path, f.Short(gantry.Millimetres)],
            { Leg: VisitLeg.Two } => t["how.leg2", path],
            _ => t["how.leg3", path],
        };
        return new(fire, title, how) { Sketch = StationSketch.Of(fire, setup, t) };
    }

    private static string Survey(VisitAction.Survey survey, VisitSetup setup, IStringLocalizer<VisitTexts> t, Figures f)
    {
        Bed bed = setup.Bed!.Travels;
        foreach (BedCorner corner in Enum.GetValues<BedCorner>())
        {
            (Length x, Length y) = bed.Place(corner);
            if (Math.Abs((x - survey.X).Millimetres) < Same && Math.Abs((y - survey.Y).Millimetres) < Same)
                return t["now.survey.corner", t["corner." + SurveyReport.Name(corner)].Value];
        }

        return t["now.survey.at", f.Short(survey.X.Millimetres), f.Short(survey.Y.Millimetres)];
    }
}
