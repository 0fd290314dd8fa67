using System.Globalization;
using MarkReader.Alignment.Advice;
using MarkReader.Alignment.Visits;
using MarkReader.Application.Survey;

namespace MarkReader.Application.Advising;

/// <summary>An action as one sentence.</summary>
public static class ActionWords
{
    public static string Of(VisitAction action) => action switch
    {
        VisitAction.Fire { Gantry: { } gantry } fire => Say($"Fire one pulse on leg {fire.Leg} at the path length {fire.Path:0.#} mm, the gantry at y {gantry.Millimetres:0.#} mm."),
        VisitAction.Fire fire => Say($"Fire one pulse on leg {fire.Leg} at the path length {fire.Path:0.#} mm."),
        VisitAction.Turn turn => Say($"Leg {turn.Leg}: turn screw {turn.Screw} {HandTurn.Nearest(turn.Turns, 0).Text}."),
        VisitAction.Survey survey => Say($"Fire one pulse on the head's tape with the head at x {survey.X.Millimetres:0.#}, the gantry at y {survey.Y.Millimetres:0.#} mm."),
        VisitAction.Shim { Height.Millimetres: < 0 } shim => Say($"Take {-shim.Height.Millimetres:0.00} mm of shims out from under the {SurveyWords.Corner(shim.Corner)} corner of the gantry's frame."),
        VisitAction.Shim shim => Say($"Put shims of {shim.Height.Millimetres:0.00} mm under the {SurveyWords.Corner(shim.Corner)} corner of the gantry's frame."),
        VisitAction.MoveTarget { By.V: 0 } move => Say($"Move the head's target {Math.Abs(move.By.U):0.00} mm to the {(move.By.U > 0 ? "right" : "left")}."),
        VisitAction.MoveTarget { By.U: 0 } move => Say($"Put {move.By.V:0.00} mm of washers under the head's mount."),
        VisitAction.MoveTarget move => Say($"Move the head's target by u {move.By.U:+0.00;-0.00}, v {move.By.V:+0.00;-0.00} mm."),
        VisitAction.RaiseTube raise => Say($"Raise the tube by {raise.Height.Millimetres:0.00} mm at both ends."),
        VisitAction.Realign { Leg: VisitLeg.Two } realign => $"Align leg 2 again with the gantry at the {SurveyWords.End(realign.At)} end of its travel.",
        VisitAction.Realign realign => $"Align leg {realign.Leg} again.",
        VisitAction.Done => "Done.",
        _ => "Stop.",
    };

    /// <summary>Whether the action is a pulse or work on the machine: then cautions belong beside it.</summary>
    public static bool NeedsCautions(VisitAction action) => action is not VisitAction.Done;

    private static string Say(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
