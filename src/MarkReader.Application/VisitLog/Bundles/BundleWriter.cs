using System.IO.Compression;
using System.Text.Json;
using MarkReader.Application.Reports;
using MarkReader.Application.Storage;

namespace MarkReader.Application.VisitLog.Bundles;

/// <summary>Writes visit.json, and the ZIP file round it.</summary>
internal static class BundleWriter
{
    public const string Format = "markreader-visit";
    public const int Version = 1;

    /// <param name="photos">What each holds, asked for when it is written.</param>
    public static void Write(Stream to, string origin, KeptVisit visit, IReadOnlyList<BundledPhoto> measured, IEnumerable<Original> photos)
    {
        using ZipArchive zip = new(to, ZipArchiveMode.Create, leaveOpen: true);
        using (Stream entry = Entry(zip, BundleArchive.VisitName, CompressionLevel.Optimal, visit.Entry.ChangedAt).Open())
        using (Utf8JsonWriter writer = new(entry, new() { Indented = true, Encoder = ReportJson.Options.Encoder }))
            Visit(writer, origin, visit, measured);
        foreach (Original photo in photos)
        {
            // A photo is packed already.
            using Stream entry = Entry(zip, $"photos/{photo.Photo.Id}{photo.Photo.Format.Extension}", CompressionLevel.NoCompression, visit.Entry.ChangedAt).Open();
            entry.Write(photo.Bytes);
        }
    }

    private static ZipArchiveEntry Entry(ZipArchive zip, string name, CompressionLevel level, DateTimeOffset time)
    {
        ZipArchiveEntry entry = zip.CreateEntry(name, level);
        // The same visit, the same bytes; ZIP knows no year before 1980 or after 2107.
        if (time.Year is >= 1980 and <= 2107)
            entry.LastWriteTime = time.ToUniversalTime();
        return entry;
    }

    private static void Visit(Utf8JsonWriter writer, string origin, KeptVisit visit, IReadOnlyList<BundledPhoto> photos)
    {
        VisitEntry entry = visit.Entry;
        writer.WriteStartObject();
        writer.WriteString("format", Format);
        writer.WriteNumber("version", Version);
        writer.WriteString("origin", origin);
        writer.WriteString("machineName", entry.MachineName);
        writer.WriteString("note", entry.Note);
        writer.WriteString("doneBy", entry.DoneBy);
        writer.WriteString("begunAt", Moment.ToText(entry.BegunAt));
        writer.WriteString("changedAt", Moment.ToText(entry.ChangedAt));
        writer.WriteNumber("visitVersion", entry.Version);
        // As they are kept, sign by sign.
        writer.WritePropertyName("machine");
        writer.WriteRawValue(visit.Machine);
        if (visit.Practice is { } practice)
        {
            writer.WritePropertyName("practice");
            JsonSerializer.Serialize(writer, practice, ReportJson.Options);
        }

        writer.WriteStartArray("events");
        foreach (KeptEvent e in visit.All)
            Event(writer, e);
        writer.WriteEndArray();
        writer.WriteStartArray("photos");
        foreach (BundledPhoto photo in photos)
            Photo(writer, photo);
        writer.WriteEndArray();
        writer.WriteEndObject();
    }

    private static void Event(Utf8JsonWriter writer, KeptEvent e)
    {
        writer.WriteStartObject();
        writer.WritePropertyName("event");
        writer.WriteRawValue(e.Text);
        writer.WriteString("photo", e.Photo);
        writer.WriteString("key", e.Request.Key);
        writer.WriteString("digest", e.Request.Digest);
        writer.WriteString("addedAt", Moment.ToText(e.AddedAt));
        writer.WriteNumber("addedVersion", e.AddedVersion);
        if (e.TakenBack is { } taken)
        {
            writer.WriteString("takenBackAt", Moment.ToText(taken.At));
            writer.WriteNumber("takenBackVersion", taken.Version);
        }

        writer.WriteEndObject();
    }

    private static void Photo(Utf8JsonWriter writer, BundledPhoto photo)
    {
        writer.WriteStartObject();
        writer.WriteString("id", photo.Id);
        if (photo.Measurement is { } measurement)
        {
            writer.WriteString("measuredBy", measurement.ProgramVersion);
            writer.WritePropertyName("report");
            writer.WriteRawValue(measurement.Report);
        }

        writer.WriteEndObject();
    }
}
