using System.Text.Json.Nodes;
using MarkReader.Application.Machines.Form;

namespace MarkReader.Application.Machines;

/// <summary>When the next visit to a machine is due.</summary>
/// <param name="Days">Days from one visit to the next, as its document has them.</param>
/// <param name="DueAt">So long after the latest visit began.</param>
public sealed record VisitReminder(double Days, DateTimeOffset DueAt)
{
    public bool IsOverdue(DateTimeOffset now) => now > DueAt;

    /// <summary>That of a document which was read before; null when it asks for none, or before the first visit.</summary>
    public static VisitReminder? Of(string document, DateTimeOffset? lastVisit) =>
        JsonTree.Parse(document) is JsonObject machine && JsonTree.Number(machine, "remindDays") is { } days and > 0 and < 100_000 && lastVisit is { } last
            ? new(days, last.AddDays(days))
            : null;
}
