using System.Collections.Concurrent;
using MarkReader.Application.Machines;
using MarkReader.Application.Storage;
using MarkReader.Application.VisitLog;
using MarkReader.Quantities;

namespace MarkReader.Application.History;

/// <summary>Makes the histories of machines from their visits.</summary>
public sealed class HistoryDesk(MachineStore machines, VisitStore visits, TimeProvider clock)
{
    /// <summary>The most visits that a history goes back.</summary>
    public const int MostVisits = 200;

    private const int MostRemembered = 4000;

    // A visit at one version is always the same; to go through its events again takes a while. Null: it cannot be used.
    private readonly ConcurrentDictionary<(long Id, long Version), HistoryVisit?> _known = new();

    /// <summary>Now, by which reminders go.</summary>
    public DateTimeOffset Now => clock.GetUtcNow();

    public Outcome<MachineHistory> Of(long machine)
    {
        if (!machines.Find(machine).TryGet(out KeptMachine? kept, out Failure? failure))
            return failure;
        List<VisitEntry> entries = [];
        for (long? before = null; ;)
        {
            if (!visits.List(before, Page<VisitEntry>.Limit, machine).TryGet(out Page<VisitEntry>? page, out failure))
                return failure;
            entries.AddRange(page.Items.Where(v => !v.IsPractice));
            if (page.Next is null || entries.Count > MostVisits)
                break;
            before = page.Items[^1].Id;
        }

        // A visit that was taken in from elsewhere has its own time, and a later number.
        VisitEntry[] newest = [.. entries.OrderByDescending(v => v.BegunAt).ThenByDescending(v => v.Id).Take(MostVisits).Reverse()];
        HistoryVisit[] read = [.. newest.Select(Read).OfType<HistoryVisit>()];
        HistoryQuantity[] quantities = [.. read.SelectMany(v => v.States.Keys).Distinct().OrderBy(q => q.Kind).ThenBy(q => q.Leg, StringComparer.Ordinal)];
        return new MachineHistory(
            kept.Entry,
            read,
            [.. quantities.Select(q => QuantityHistory.Of(q, read)).OfType<QuantityHistory>()],
            VisitReminder.Of(kept.Text, newest.Length == 0 ? null : newest[^1].BegunAt),
            newest.Length - read.Length,
            entries.Count > MostVisits);
    }

    private HistoryVisit? Read(VisitEntry entry)
    {
        if (_known.TryGetValue((entry.Id, entry.Version), out HistoryVisit? known))
            return known;
        HistoryVisit? read = visits.Find(entry.Id).TryGet(out KeptVisit? visit, out _) && VisitStates.Of(visit).TryGet(out HistoryVisit? states, out _) ? states : null;
        if (_known.Count >= MostRemembered)
            _known.Clear();
        _known[(entry.Id, visit?.Entry.Version ?? entry.Version)] = read;
        return read;
    }
}
