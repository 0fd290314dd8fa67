using MarkReader.Alignment.Survey;
using MarkReader.Alignment.Visits;

namespace MarkReader.Application.Pictures;

/// <summary>How many of a visit's events came before something was first changed; null when it was not.</summary>
internal static class FirstChange
{
    private const int Places = 4;

    /// <summary>Before the leg's first turn.</summary>
    public static int? OfLeg(IReadOnlyList<VisitEvent> events, string leg) => First(events, e => e is VisitEvent.Turn turn && turn.Leg == leg);

    public static int? OfCentring(IReadOnlyList<VisitEvent> events) => First(events, e => e is VisitEvent.MoveTarget or VisitEvent.RaiseTube);

    /// <summary>After the first survey of four places or more, before what was done then.</summary>
    public static int? AfterSurvey(VisitSetup setup, IReadOnlyList<VisitEvent> events)
    {
        for (int i = 1; i < events.Count; i++)
        {
            if (events[i - 1] is not VisitEvent.Survey || events[i] is VisitEvent.Survey)
                continue;
            IReadOnlyList<SurveyMark> marks = VisitMarks.Of(setup, [.. events.Take(i)]).Survey;
            if (marks.DistinctBy(m => (m.X, m.Y)).Count() >= Places)
                return i;
        }

        return null;
    }

    private static int? First(IReadOnlyList<VisitEvent> events, Func<VisitEvent, bool> isChange)
    {
        int at = events.ToList().FindIndex(e => isChange(e));
        return at < 0 ? null : at;
    }
}
