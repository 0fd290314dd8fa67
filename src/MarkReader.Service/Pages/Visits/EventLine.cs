using MarkReader.Alignment.Advice;
using MarkReader.Alignment.Visits;
using MarkReader.Application.Reports;
using MarkReader.Application.VisitLog;
using MarkReader.Quantities;
using MarkReader.Service.Display;
using MarkReader.Service.Texts;
using Microsoft.Extensions.Localization;

namespace MarkReader.Service.Pages.Visits;

/// <summary>An event in one line.</summary>
public sealed record EventLine(KeptEvent Kept, string Words)
{
    internal static EventLine Of(KeptEvent kept, VisitEvent e, IStringLocalizer<VisitTexts> t, Figures f) => new(kept, Say(e, t, f));

    private static string Say(VisitEvent e, IStringLocalizer<VisitTexts> t, Figures f)
    {
        string Corner(Alignment.Survey.BedCorner corner) => t["corner." + SurveyReport.Name(corner)];
        string U(MeasuredPoint at) => f.Signed(at.Point.U);
        string V(MeasuredPoint at) => f.Signed(at.Point.V) + "\u00a0" + f.Unit;
        return e switch
        {
            VisitEvent.Mark mark => t["event.mark", mark.Leg, f.Short(mark.Path), U(mark.At), V(mark.At)],
            VisitEvent.Survey { Seen: var seen } => t["event.survey", f.Field(seen.X.Millimetres), f.Short(seen.Y.Millimetres), U(seen.Mark), V(seen.Mark)],
            VisitEvent.Turn turn => t["event.turn", turn.Leg, turn.Screw, HandTurn.Nearest(turn.Turns, 0).Text],
            VisitEvent.Shim { Height.Millimetres: < 0 } shim => t["event.unshim", f.Length(-shim.Height.Millimetres), Corner(shim.Corner)],
            VisitEvent.Shim shim => t["event.shim", f.Length(shim.Height.Millimetres), Corner(shim.Corner)],
            VisitEvent.MoveTarget move => t["event.move", f.Signed(move.By.U), f.Signed(move.By.V) + "\u00a0" + f.Unit],
            VisitEvent.RaiseTube raise => t["event.raise", f.Length(raise.Height.Millimetres)],
            VisitEvent.Realign realign => t["event.realign", realign.Leg],
            VisitEvent.Disturbed disturbed => t["event.disturbed", disturbed.Leg],
            VisitEvent.Skip skip => t["event.skip", t["step." + skip.Step.Name()].Value, skip.Reason],
            VisitEvent.Again again => t["event.again", t["step." + again.Step.Name()].Value],
            _ => "",
        };
    }
}
