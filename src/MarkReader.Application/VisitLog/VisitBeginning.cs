using System.Text.Json;
using MarkReader.Application.Advising;
using MarkReader.Quantities;

namespace MarkReader.Application.VisitLog;

/// <summary>What a visit is begun with: {"machine": 3, "note": "…"}.</summary>
/// <param name="MachineId">Number of a machine that is kept.</param>
/// <param name="Note">May be empty.</param>
public sealed record VisitBeginning(long MachineId, string Note)
{
    /// <summary>Largest text of it, bytes.</summary>
    public const int MostBytes = 4 << 10;

    /// <summary>Longest note, UTF-16 units.</summary>
    public const int LongestNote = 500;

    private const double LargestId = 1L << 53;

    public static Outcome<VisitBeginning> Read(ReadOnlyMemory<byte> bytes)
    {
        using JsonDocument? document = JsonText.Parse(bytes, new() { MaxDepth = 4 }, out string unreadable);
        if (document is null)
            return new Failure(VisitLogFailures.BeginningUnreadable, $"what begins the visit {unreadable}", "write {\"machine\": 3}, with the number of a machine that is kept");
        JsonFields fields = new(VisitLogFailures.BeginningUnreadable);
        JsonObject beginning = fields.Object(document.RootElement, "what begins the visit", "machine", "note");
        double machine = beginning.Number("machine");
        string note = beginning.Text("note", "");
        if (!(machine >= 0 && machine <= LargestId) || machine != Math.Floor(machine))
            fields.Refuse("'machine' of what begins the visit is not the number of a machine", "give the id of a machine that is kept");
        if (note.Length > LongestNote || note.Any(c => char.IsControl(c) && c is not '\n'))
            fields.Refuse($"'note' of what begins the visit is longer than {LongestNote} signs, or has signs that cannot be shown", "shorten it");
        return fields.Wrong is { } wrong ? wrong : new VisitBeginning((long)machine, note);
    }
}
