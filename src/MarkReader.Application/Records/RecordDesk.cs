using System.Globalization;
using MarkReader.Application.Storage;
using MarkReader.Application.VisitLog;
using MarkReader.Drawing.Cards;
using MarkReader.Quantities;

namespace MarkReader.Application.Records;

/// <summary>Writes the records of visits that are kept.</summary>
public sealed class RecordDesk(VisitStore visits, PhotoStore photos, TimeProvider clock)
{
    public Outcome<WrittenRecord> Write(long id, RecordFile kind, RecordFormat format, Paper paper) =>
        visits.Find(id).TryGet(out KeptVisit? visit, out Failure? failure)
        && RecordMaker.Make(RecordSource.Of(visit), new KeptRecordPhotos(photos), clock.GetUtcNow()).TryGet(out VisitRecord? record, out failure)
            ? new WrittenRecord(Name(visit, kind.Extension), kind.Write(record, format, paper))
            : failure;

    /// <summary>A name for a file of a visit: visit-12-2026-11-26.pdf, with the day on which it last changed (UTC).</summary>
    public static string Name(KeptVisit visit, string extension) =>
        string.Create(CultureInfo.InvariantCulture, $"visit-{visit.Entry.Id}-{visit.Entry.ChangedAt.UtcDateTime:yyyy-MM-dd}{extension}");
}

/// <summary>A record as a file.</summary>
/// <param name="Name">A name for it: lower case letters, digits, hyphens and a point.</param>
public sealed record WrittenRecord(string Name, byte[] Bytes);
