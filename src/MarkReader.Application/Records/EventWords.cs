using System.Globalization;
using MarkReader.Alignment.Advice;
using MarkReader.Alignment.Visits;
using MarkReader.Application.Survey;
using MarkReader.Application.Texts;

namespace MarkReader.Application.Records;

/// <summary>What happened, in words: what was done, not what is to be done.</summary>
internal static class EventWords
{
    public static string Of(RecordEvent e, RecordFormat format)
    {
        string words = Of(e.Event, e.Mark, format);
        return e.Note.Length == 0 ? words : RecordTexts.Say("WithNote", words, e.Note);
    }

    /// <summary>Where a mark was made.</summary>
    public static string Place(VisitEvent e, RecordFormat format) => e switch
    {
        VisitEvent.Mark mark => RecordTexts.Say("PlaceLeg", mark.Leg, format.Short(mark.Path)),
        VisitEvent.Survey survey => Placed("PlaceHead", format.ShortNumber(survey.Seen.X.Millimetres), format.Short(survey.Seen.Y.Millimetres)),
        _ => "",
    };

    private static string Of(VisitEvent e, int? mark, RecordFormat format)
    {
        string number = mark?.ToString(CultureInfo.InvariantCulture) ?? "";
        string U(double mm) => format.SignedLength(mm, 2);
        switch (e)
        {
            case VisitEvent.Mark { Gantry: { } gantry } m:
                return Placed("EventMarkGantry", m.Leg, format.Short(m.Path), number, U(m.At.Point.U), U(m.At.Point.V), format.UnitName, format.Short(gantry.Millimetres));
            case VisitEvent.Mark m:
                return Placed("EventMark", m.Leg, format.Short(m.Path), number, U(m.At.Point.U), U(m.At.Point.V), format.UnitName);
            case VisitEvent.Turn turn:
                return RecordTexts.Say("EventTurn", turn.Leg, turn.Screw, HandTurn.Nearest(turn.Turns, 0).Text);
            case VisitEvent.Survey survey:
                return Placed(
                    "EventSurvey", format.ShortNumber(survey.Seen.X.Millimetres), format.Short(survey.Seen.Y.Millimetres), number, U(survey.Seen.Mark.Point.U), U(survey.Seen.Mark.Point.V), format.UnitName);
            case VisitEvent.Shim shim:
                double height = shim.Height.Millimetres;
                return RecordTexts.Say(height < 0 ? "EventUnshim" : "EventShim", format.WithUnit(Math.Abs(height), 2), SurveyWords.Corner(shim.Corner));
            case VisitEvent.MoveTarget move:
                return Placed("EventMove", U(move.By.U), U(move.By.V), format.UnitName);
            case VisitEvent.RaiseTube raise:
                double rise = raise.Height.Millimetres;
                return RecordTexts.Say(rise < 0 ? "EventLower" : "EventRaise", format.WithUnit(Math.Abs(rise), 2));
            case VisitEvent.Realign { Leg: VisitLeg.Two } realign:
                return RecordTexts.Say("EventRealignEnd", realign.Leg, SurveyWords.End(realign.At));
            case VisitEvent.Realign realign:
                return RecordTexts.Say("EventRealign", realign.Leg);
            case VisitEvent.Skip skip:
                return RecordTexts.Say("EventSkip", RecordTexts.Get("step." + skip.Step), skip.Reason);
            case VisitEvent.Again again:
                return RecordTexts.Say("EventAgain", RecordTexts.Get("step." + again.Step));
            case VisitEvent.Disturbed disturbed:
                return RecordTexts.Say("EventDisturbed", disturbed.Leg);
            default:
                throw new ArgumentException("Unknown event.", nameof(e));
        }
    }

    private static string Placed(string key, params string[] parts) => CommaPairs.Apart(RecordTexts.Say(key, parts));
}
