using System.Globalization;
using System.Text.Json;
using MarkReader.Application.Advising;
using MarkReader.Application.VisitLog;
using MarkReader.Quantities;

namespace MarkReader.Application.Records;

/// <summary>What a record is made from: a visit that is kept, or a visit file.</summary>
/// <param name="Machine">The machine's document (JSON).</param>
/// <param name="Events">All events in their order, with those that were taken back.</param>
public sealed record RecordSource(string Machine, IReadOnlyList<RecordSourceEvent> Events)
{
    /// <summary>The visit's number; null when it is not kept.</summary>
    public long? Number { get; init; }

    /// <summary>The name under which the machine is kept; null: that in its document.</summary>
    public string? MachineName { get; init; }

    public string Note { get; init; } = "";

    /// <summary>Who did the work; may be empty.</summary>
    public string DoneBy { get; init; } = "";

    /// <summary>Whether its machine exists only in this program.</summary>
    public bool IsPractice { get; init; }

    /// <summary>Null when it is not known.</summary>
    public DateTimeOffset? BegunAt { get; init; }

    public static RecordSource Of(KeptVisit visit) => new(visit.Machine, [.. visit.All.Select(e => new RecordSourceEvent(e.Text, e.Photo, e.AddedAt, e.TakenBack?.At))])
    {
        Number = visit.Entry.Id,
        MachineName = visit.Entry.MachineName,
        Note = visit.Entry.Note,
        DoneBy = visit.Entry.DoneBy,
        BegunAt = visit.Entry.BegunAt,
        IsPractice = visit.Entry.IsPractice,
    };

    /// <summary>That of a visit file; an event's time is known when it has a field "time" (ISO 8601).</summary>
    public static Outcome<RecordSource> Read(ReadOnlyMemory<byte> bytes)
    {
        if (!VisitFile.Read(bytes).TryGet(out _, out Failure? failure))
            return failure;
        using JsonDocument file = VisitFile.Parse(bytes);
        JsonElement[] events = file.RootElement.TryGetProperty("events", out JsonElement list) && list.ValueKind == JsonValueKind.Array ? [.. list.EnumerateArray()] : [];
        return new RecordSource(file.RootElement.GetProperty("machine").GetRawText(), [.. events.Select(e => new RecordSourceEvent(e.GetRawText(), null, Time(e), null))]);
    }

    private static DateTimeOffset? Time(JsonElement e) =>
        e.TryGetProperty("time", out JsonElement time) && time.ValueKind == JsonValueKind.String
        && DateTimeOffset.TryParse(time.GetString(), CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out DateTimeOffset at)
            ? at
            : null;
}

/// <summary>An event of a visit.</summary>
/// <param name="Text">As a visit file has it (JSON).</param>
/// <param name="Photo">Id of the photo in which its mark was measured.</param>
/// <param name="At">When it came in; null when that is not known.</param>
/// <param name="TakenBackAt">When it was taken back; null: it counts.</param>
public sealed record RecordSourceEvent(string Text, string? Photo, DateTimeOffset? At, DateTimeOffset? TakenBackAt);
