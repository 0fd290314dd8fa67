using Dapper;
using MarkReader.Quantities;
using Microsoft.Data.Sqlite;

namespace MarkReader.Application.Storage;

/// <summary>Keeps original photos, each once, and what was measured in them.</summary>
public sealed class PhotoStore
{
    private const int ConstraintForeignKey = 787;
    private const int ConstraintTrigger = 1811;

    private readonly Database _database;
    private readonly TimeProvider _clock;
    private readonly PhotoFiles _files;

    public PhotoStore(Database database, TimeProvider clock)
    {
        (_database, _clock) = (database, clock);
        _files = new(database.Folder.Photos);
        _files.Tidy(clock.GetUtcNow());
    }

    /// <summary>Keeps a photo before anything is done with it; the same bytes are kept once.</summary>
    public Outcome<PhotoReceipt> Keep(ReadOnlyMemory<byte> bytes)
    {
        if (OriginalFormat.Of(bytes.Span) is not { } format)
        {
            return new Failure(
                StorageFailures.NotAPhoto,
                bytes.IsEmpty ? StorageTexts.Get("photoStore.fileEmpty") : StorageTexts.Get("photoStore.fileNotJpegPngOr"),
                StorageTexts.Get("photoStore.sendPhotoAsJpeg"));
        }
        KeptPhoto photo = new(PhotoFiles.Digest(bytes.Span), format, bytes.Length, _clock.GetUtcNow());
        return _database.Run<PhotoReceipt>(connection =>
        {
            // The lock on the database first, so that no one deletes the file meanwhile; then the file: a row never stands for bytes that are not there.
            using SqliteTransaction transaction = connection.BeginTransaction();
            _files.Write(photo.Id, photo.Format, bytes.Span);
            int added = connection.Execute(
                "INSERT INTO photos (id, format, length, received_at) VALUES (@Id, @Format, @Length, @ReceivedAt) ON CONFLICT DO NOTHING",
                new { photo.Id, Format = photo.Format.Name, photo.Length, ReceivedAt = Moment.ToText(photo.ReceivedAt) });
            KeptPhoto kept = Find(connection, photo.Id)!;
            transaction.Commit();
            return new PhotoReceipt(kept, added == 1);
        });
    }

    /// <summary>What is known of a photo.</summary>
    public Outcome<KeptPhoto> Find(string id) => _database.Run<KeptPhoto>(connection =>
        Find(connection, id) is { } photo ? photo : StorageFailures.NoPhoto(id));

    /// <summary>A photo's bytes, as they came in.</summary>
    public Outcome<Original> Read(string id) => _database.Run<Original>(connection =>
    {
        if (Find(connection, id) is not { } photo)
            return StorageFailures.NoPhoto(id);
        return _files.Read(photo.Id, photo.Format) is { } bytes
            ? new Original(photo, bytes)
            : new Failure(
                StorageFailures.OriginalDamaged,
                StorageTexts.Word("photoStore.originalGoneOrWasChanged", _files.PathOf(photo.Id, photo.Format)),
                StorageTexts.Get("common.sendPhotoAgain"));
    });

    /// <summary>The photos, newest first, from just after <paramref name="after"/> (a photo's id, or null for the newest) on.</summary>
    public Outcome<Page<KeptPhoto>> List(string? after, int limit) => _database.Run<Page<KeptPhoto>>(connection =>
    {
        int size = Math.Clamp(limit, 1, Page<KeptPhoto>.Limit);
        List<KeptPhoto> photos = [.. connection.Query<Row>(
            """
            SELECT id, format, length, received_at AS ReceivedAt FROM photos
            WHERE @after IS NULL OR (received_at, id) < (SELECT received_at, id FROM photos WHERE id = @after)
            ORDER BY received_at DESC, id DESC LIMIT @more
            """,
            new { after, more = size + 1 }).Select(row => row.ToPhoto())];
        return new Page<KeptPhoto>([.. photos.Take(size)], photos.Count > size ? photos[size - 1].Id : null);
    });

    /// <summary>Removes a photo with what was measured in it, unless a result, a visit or a set of reference photos refers to it.</summary>
    public Outcome<KeptPhoto> Delete(string id) => _database.Run<KeptPhoto>(connection =>
    {
        if (Find(connection, id) is not { } photo)
            return StorageFailures.NoPhoto(id);
        using SqliteTransaction transaction = connection.BeginTransaction();
        try
        {
            connection.Execute("DELETE FROM photos WHERE id = @id", new { id });
        }
        catch (SqliteException fault) when (fault.SqliteExtendedErrorCode is ConstraintForeignKey or ConstraintTrigger)
        {
            return new Failure(StorageFailures.PhotoInUse, StorageTexts.Get("photoStore.resultOrVisitRefersThis"), StorageTexts.Get("photoStore.deleteResultFirstPhotosVisit"));
        }
        _files.Delete(photo.Id, photo.Format);
        transaction.Commit();
        return photo;
    });

    /// <summary>Keeps what a version of the program measured in a photo, in place of an earlier answer of the same version.</summary>
    public Outcome<KeptMeasurement> KeepMeasurement(string id, string programVersion, KeptAnswer answer) => _database.Run<KeptMeasurement>(connection =>
    {
        if (Find(connection, id) is null)
            return StorageFailures.NoPhoto(id);
        string time = Moment.ToText(_clock.GetUtcNow());
        connection.Execute(
            """
            INSERT INTO measurements (photo_id, program_version, measured_at, report, refusal)
            VALUES (@id, @programVersion, @time, @report, @refusal)
            ON CONFLICT DO UPDATE SET measured_at = @time, report = @report, refusal = @refusal
            """,
            new { id, programVersion, time, report = answer.ReportText, refusal = answer.RefusalJson });
        return new KeptMeasurement(answer, programVersion, Moment.Parse(time));
    });

    /// <summary>The latest that was measured in a photo; the failure NOT_KEPT when nothing was.</summary>
    public Outcome<KeptMeasurement> FindMeasurement(string id) => _database.Run<KeptMeasurement>(connection =>
        connection.QueryFirstOrDefault<MeasurementRow>(
            """
            SELECT report, refusal, program_version AS ProgramVersion, measured_at AS MeasuredAt FROM measurements
            WHERE photo_id = @id ORDER BY measured_at DESC, rowid DESC LIMIT 1
            """,
            new { id }) is { } row
            ? new KeptMeasurement(KeptAnswer.From(row.Report, row.Refusal), row.ProgramVersion, Moment.Parse(row.MeasuredAt))
            : StorageFailures.NoPhoto(id));

    private static KeptPhoto? Find(SqliteConnection connection, string id) =>
        connection.QueryFirstOrDefault<Row>(
            "SELECT id, format, length, received_at AS ReceivedAt FROM photos WHERE id = @id", new { id })?.ToPhoto();

    private sealed record Row(string Id, string Format, long Length, string ReceivedAt)
    {
        public KeptPhoto ToPhoto() => new(Id, OriginalFormat.Named(Format), Length, Moment.Parse(ReceivedAt));
    }

    private sealed record MeasurementRow(string? Report, string? Refusal, string ProgramVersion, string MeasuredAt);
}
