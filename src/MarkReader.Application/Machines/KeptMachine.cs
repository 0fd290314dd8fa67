using System.Text;
using MarkReader.Quantities;

namespace MarkReader.Application.Machines;

/// <summary>A machine that is kept, without its document.</summary>
/// <param name="Id">Counts up; never used twice.</param>
/// <param name="Name">The name in its document, else "machine" and the id.</param>
/// <param name="Version">1 at first; one more with each change.</param>
/// <param name="AddedAt">When it came in (UTC, to the millisecond).</param>
/// <param name="ChangedAt">When it last changed.</param>
public sealed record MachineEntry(long Id, string Name, long Version, DateTimeOffset AddedAt, DateTimeOffset ChangedAt);

/// <summary>A machine that is kept.</summary>
/// <param name="Text">Its document, as it was given.</param>
public sealed record KeptMachine(MachineEntry Entry, string Text)
{
    /// <summary>What in the document is not used or does not agree; empty when this version cannot read it.</summary>
    public IReadOnlyList<Warning> Warnings => MachineFile.Read(Encoding.UTF8.GetBytes(Text)).TryGet(out MachineDocument? document, out _) ? document.Warnings : [];
}

/// <summary>A machine as lists show it.</summary>
/// <param name="Bed">The head's and the gantry's travel; null when its document has no bed.</param>
/// <param name="LastVisitAt">When the latest visit to it began, or null.</param>
public sealed record MachineOverview(MachineEntry Entry, BedSize? Bed, DateTimeOffset? LastVisitAt)
{
    /// <summary>When the next visit is due; null when none is asked for.</summary>
    public VisitReminder? Reminder { get; init; }
}

/// <summary>A machine whose document says the same as another's.</summary>
/// <param name="Entry">Null when there is none.</param>
public sealed record SameMachine(MachineEntry? Entry);
