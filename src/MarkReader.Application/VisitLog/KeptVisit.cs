using System.Text;
using MarkReader.Application.Advising;
using MarkReader.Application.Practising;
using MarkReader.Application.Storage;

namespace MarkReader.Application.VisitLog;

/// <summary>A visit that is kept, without machine and events.</summary>
/// <param name="Id">Counts up; never used twice.</param>
/// <param name="MachineId">The machine that it was begun with; null when that is no longer kept.</param>
/// <param name="MachineName">The machine's name when the visit began.</param>
/// <param name="Note">As given; may be empty.</param>
/// <param name="Version">1 at first; one more with each event that is added or taken back.</param>
/// <param name="BegunAt">UTC, to the millisecond.</param>
/// <param name="ChangedAt">When the version last changed.</param>
/// <param name="DoneBy">Who does the work; may be empty.</param>
/// <param name="IsPractice">Whether its machine exists only in this program.</param>
public sealed record VisitEntry(
    long Id, long? MachineId, string MachineName, string Note, long Version, DateTimeOffset BegunAt, DateTimeOffset ChangedAt, string DoneBy = "", bool IsPractice = false);

/// <summary>An event of a visit.</summary>
/// <param name="Number">Counts up in its visit; never used twice.</param>
/// <param name="Text">The event as a visit file has it (JSON).</param>
/// <param name="Photo">Id of the photo in which its mark was measured; null when it was not given by a photo.</param>
/// <param name="Request">The request that added it.</param>
/// <param name="AddedAt">UTC, to the millisecond.</param>
/// <param name="AddedVersion">The visit's version that it made.</param>
/// <param name="TakenBack">When it was taken back; null: it counts.</param>
public sealed record KeptEvent(int Number, string Text, string? Photo, RequestKey Request, DateTimeOffset AddedAt, long AddedVersion, TakenBack? TakenBack);

/// <summary>When an event was taken back, and the visit's version which that made.</summary>
public sealed record TakenBack(DateTimeOffset At, long Version);

/// <summary>A visit that is kept.</summary>
/// <param name="Machine">The machine's document when it began (JSON).</param>
/// <param name="All">All events in their order, with those that were taken back.</param>
public sealed record KeptVisit(VisitEntry Entry, string Machine, IReadOnlyList<KeptEvent> All)
{
    /// <summary>The practice machine of the visit; null when its machine is a real one.</summary>
    public PracticeRequest? Practice { get; init; }

    /// <summary>The events that count.</summary>
    public IEnumerable<KeptEvent> Events => EventsAt(Entry.Version);

    /// <summary>The events that counted at an earlier version.</summary>
    public IEnumerable<KeptEvent> EventsAt(long version) => All.Where(e => e.AddedVersion <= version && !(e.TakenBack?.Version <= version));

    /// <summary>The visit file, which advise reads.</summary>
    public string File() => File(Machine, Events.Select(e => e.Text));

    /// <summary>The file of a visit to the same machine with other events.</summary>
    internal string FileOf(IEnumerable<KeptEvent> events) => File(Machine, events.Select(e => e.Text));

    internal byte[] FileBytes() => Encoding.UTF8.GetBytes(File());

    /// <summary>The visit file of an earlier version.</summary>
    public string FileAt(long version) => File(Machine, EventsAt(version).Select(e => e.Text));

    internal string FileWithout(int number) => File(Machine, Events.Where(e => e.Number != number).Select(e => e.Text));

    internal string FileWith(string further) => File(Machine, Events.Select(e => e.Text).Append(further));

    // Each part was read as one JSON value of its own before it was kept.
    private static string File(string machine, IEnumerable<string> events) => VisitFile.Write(machine, events);
}
