using System.Text;
using System.Text.Json;
using MarkReader.Alignment.Visits;
using MarkReader.Application.Advising;
using MarkReader.Application.Reports;
using MarkReader.Application.Storage;
using MarkReader.Quantities;

namespace MarkReader.Application.Records;

/// <summary>Makes the record of a visit.</summary>
public static class RecordMaker
{
    private const int LongestNote = 400;

    /// <param name="photos">Where the photos that the events name can be had.</param>
    /// <param name="madeAt">The time that the record states as its own.</param>
    public static Outcome<VisitRecord> Make(RecordSource source, IRecordPhotos photos, DateTimeOffset madeAt)
    {
        string file = VisitFile.Write(source.Machine, source.Events.Where(e => e.TakenBackAt is null).Select(e => e.Text));
        if (!VisitFile.Read(Encoding.UTF8.GetBytes(file)).TryGet(out Visit? visit, out Failure? failure)
            || !VisitAdviser.Advise(visit.Setup, visit.Events).TryGet(out VisitAdvice? advice, out failure)
            || !Read(source.Events).TryGet(out IReadOnlyList<ReadEvent>? read, out failure))
            return failure;
        advice = advice with { Warnings = [.. visit.Warnings, .. advice.Warnings] };
        RecordPhotoAlbum album = new(photos);
        List<RecordEvent> events = [];
        List<RecordMark> marks = [];
        List<(RecordMark Mark, MarkReport? Report)> measured = [];
        // As the pictures count them: those that count from 1 on, those that were taken back after them.
        int counted = 0, gone = read.Count(e => e.Source.TakenBackAt is null && Mark(e.Event) is not null);
        foreach (ReadEvent e in read)
        {
            MeasuredPoint? at = Mark(e.Event);
            MarkReport? report = at is null ? null : album.Find(e.Photo, at.Point);
            int? photo = at is null ? null : album.Number(e.Photo, report);
            int? number = at is null ? null : e.Source.TakenBackAt is null ? ++counted : ++gone;
            RecordEvent recorded = new(events.Count + 1, e.Source, e.Event, e.Note, number, photo);
            events.Add(recorded);
            if (at is null)
                continue;
            marks.Add(new(number!.Value, recorded, at, report?.Diameter, photo));
            measured.Add((marks[^1], report));
        }

        FoundStates found = new(visit.Setup, visit.Events, advice);
        return new VisitRecord(
            source,
            source.MachineName ?? NameIn(source.Machine),
            visit.Setup,
            advice,
            found.Steps(),
            events,
            marks,
            RecordBudgets.Of(visit, found, advice, measured),
            album.Photos,
            album.Missing,
            madeAt,
            ProgramVersion.Current);
    }

    private static MeasuredPoint? Mark(VisitEvent e) => e switch
    {
        VisitEvent.Mark mark => mark.At,
        VisitEvent.Survey survey => survey.Seen.Mark,
        _ => null,
    };

    private static Outcome<IReadOnlyList<ReadEvent>> Read(IReadOnlyList<RecordSourceEvent> events)
    {
        JsonFields fields = new(AdvisingFailures.Unreadable);
        List<ReadEvent> read = [];
        foreach (RecordSourceEvent e in events)
        {
            using JsonDocument document = VisitFile.Parse(Encoding.UTF8.GetBytes(e.Text));
            if (EventJson.Read(fields, document.RootElement, read.Count + 1) is not { } known)
                return fields.Wrong!;
            string note = Text(document.RootElement, "note") ?? "";
            read.Add(new(e, known, Short(note), e.Photo ?? Text(document.RootElement, "photo")));
        }

        return read;
    }

    private static string? Text(JsonElement e, string name) => e.TryGetProperty(name, out JsonElement value) && value.ValueKind == JsonValueKind.String ? value.GetString() : null;

    private static string Short(string text)
    {
        string line = string.Concat(text.Select(c => char.IsControl(c) ? ' ' : c)).Trim();
        return line.Length > LongestNote ? line[..LongestNote] + "…" : line;
    }

    private static string NameIn(string machine)
    {
        using JsonDocument document = VisitFile.Parse(Encoding.UTF8.GetBytes(machine));
        return Short(Text(document.RootElement, "name") ?? "");
    }

    private sealed record ReadEvent(RecordSourceEvent Source, VisitEvent Event, string Note, string? Photo);
}
