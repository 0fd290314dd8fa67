using System.Collections.Concurrent;
using MarkReader.Alignment.Verdicts;
using MarkReader.Alignment.Visits;
using MarkReader.Application.Advising;

namespace MarkReader.Application.VisitLog;

/// <summary>How a visit stands as a whole, for a list.</summary>
public enum VisitStanding
{
    NotFinished,
    Stopped,
    DoneWithSkips,
    Within,
    Outside,
    Undecided,
}

/// <summary>Tells how visits stand; what was worked out for a version is remembered.</summary>
public sealed class VisitStandings(VisitStore visits)
{
    private const int MostRemembered = 4000;

    // Null: it cannot be used.
    private readonly ConcurrentDictionary<(long Id, long Version), VisitStanding?> _known = new();

    /// <returns>Null when this version of the program cannot use the visit.</returns>
    public VisitStanding? Of(VisitEntry entry)
    {
        if (_known.TryGetValue((entry.Id, entry.Version), out VisitStanding? known))
            return known;
        if (!visits.Find(entry.Id).TryGet(out KeptVisit? visit, out _))
            return null;
        VisitStanding? standing = AdviseVisit.At(visit, visit.Entry.Version).TryGet(out VisitAdvice? advice, out _) ? Of(advice) : null;
        if (_known.Count >= MostRemembered)
            _known.Clear();
        return _known[(entry.Id, visit.Entry.Version)] = standing;
    }

    private static VisitStanding Of(VisitAdvice advice) => advice switch
    {
        { Action: VisitAction.Stop } => VisitStanding.Stopped,
        { Action: not VisitAction.Done } => VisitStanding.NotFinished,
        { State.Skipped.Count: > 0 } => VisitStanding.DoneWithSkips,
        { State.Machine.Verdict: Verdict.Within } => VisitStanding.Within,
        { State.Machine.Verdict: Verdict.Outside } => VisitStanding.Outside,
        _ => VisitStanding.Undecided,
    };
}
