using MarkReader.Alignment.Advice;
using MarkReader.Alignment.Visits;
using MarkReader.Application.Survey;
using static MarkReader.Quantities.Texts<MarkReader.Application.Texts.AdviceTexts>;

namespace MarkReader.Application.Advising;

/// <summary>An action as one sentence.</summary>
public static class ActionWords
{
    public static string Of(VisitAction action) => action switch
    {
        VisitAction.Fire { Gantry: { } gantry } fire => Say("action.fireAtGantry", fire.Leg, fire.Path, gantry.Millimetres),
        VisitAction.Fire fire => Say("action.fire", fire.Leg, fire.Path),
        VisitAction.Turn turn => Say("action.turn", turn.Leg, turn.Screw, HandTurn.Nearest(turn.Turns, 0).Advice),
        VisitAction.Survey survey => Say("action.survey", survey.X.Millimetres, survey.Y.Millimetres),
        VisitAction.Shim { Height.Millimetres: < 0 } shim => Say("action.unshim", -shim.Height.Millimetres, SurveyWords.Corner(shim.Corner)),
        VisitAction.Shim shim => Say("action.shim", shim.Height.Millimetres, SurveyWords.Corner(shim.Corner)),
        VisitAction.MoveTarget { By.V: 0 } move => Say("action.moveSideways", Math.Abs(move.By.U), move.By.U > 0 ? Get("right") : Get("left")),
        VisitAction.MoveTarget { By.U: 0 } move => Say("action.moveUp", move.By.V),
        VisitAction.MoveTarget move => Say("action.move", move.By.U, move.By.V),
        VisitAction.RaiseTube raise => Say("action.raiseTube", raise.Height.Millimetres),
        VisitAction.Realign { Leg: VisitLeg.Two } realign => Say("action.realignTwo", SurveyWords.End(realign.At)),
        VisitAction.Realign realign => Say("action.realign", realign.Leg),
        VisitAction.Done => Get("action.done"),
        _ => Get("action.stop"),
    };

    /// <summary>Whether the action is a pulse or work on the machine: then cautions belong beside it.</summary>
    public static bool NeedsCautions(VisitAction action) => action is not VisitAction.Done;
}
