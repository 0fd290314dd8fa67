using Dapper;
using MarkReader.Application.Reports;
using MarkReader.Application.Storage;
using MarkReader.Quantities;
using Microsoft.Data.Sqlite;

namespace MarkReader.Application.Cameras;

/// <summary>Keeps calibrations that are being worked on. <see cref="CalibrationDesk"/> measures their photos and makes the cameras.</summary>
public sealed class CalibrationStore(Database database, TimeProvider clock)
{
    /// <summary>The most calibrations that are kept.</summary>
    public const int Most = 100;

    /// <summary>The most photos that one may have, with those that are not used.</summary>
    public const int MostPhotos = 40;

    // Columns of the table only: of an expression the type is not known while there are no rows.
    private const string Columns = "id, version, begun_at AS BegunAt, changed_at AS ChangedAt, camera_id AS CameraId";

    /// <summary>Begins a calibration.</summary>
    /// <param name="key">The request's key; one that is repeated gives the calibration that it began. Null: every call begins one.</param>
    /// <param name="reopen">Whether one that is there without photos and without a camera is opened instead, the newest of several.</param>
    public Outcome<KeptCalibration> Begin(RequestKey? key = null, bool reopen = false) => database.Run<KeptCalibration>(connection =>
    {
        using SqliteTransaction transaction = connection.BeginTransaction();
        if (!EarlierRow.Find(connection, "calibrations", key).TryGet(out EarlierRow? earlier, out Failure? failure))
            return failure;
        if (earlier.Id is { } there)
            return Find(connection, there)!;
        if (reopen && connection.QueryFirstOrDefault<long?>(
            "SELECT id FROM calibrations WHERE camera_id IS NULL AND id NOT IN (SELECT calibration_id FROM calibration_photos) ORDER BY id DESC") is { } empty)
        {
            return Find(connection, empty)!;
        }

        if (connection.QuerySingle<int>("SELECT count(*) FROM calibrations") >= Most)
            return new Failure(CameraFailures.TooManyCalibrations, KeptCameraTexts.Word("calibration.tooMany", Most), KeptCameraTexts.Get("calibration.tooManyHint"));
        long id = connection.QuerySingle<long>(
            "INSERT INTO calibrations (version, begun_at, changed_at, request_key, request_digest) VALUES (1, @time, @time, @Key, @Digest) RETURNING id",
            new { time = Now(), key?.Key, key?.Digest });
        KeptCalibration begun = Find(connection, id)!;
        transaction.Commit();
        return begun;
    });

    /// <summary>The calibration with this id.</summary>
    public Outcome<KeptCalibration> Find(long id) => database.Run<KeptCalibration>(connection =>
    {
        // One view of both tables.
        using SqliteTransaction transaction = connection.BeginTransaction(deferred: true);
        return Find(connection, id) is { } calibration ? calibration : CameraFailures.NoCalibration(id);
    });

    /// <summary>The calibrations, newest first, from just before the id <paramref name="before"/> (null: from the newest) on.</summary>
    public Outcome<Page<CalibrationEntry>> List(long? before, int limit) => database.Run<Page<CalibrationEntry>>(connection =>
    {
        PageOrder order = PageOrder.Of(before, limit);
        using SqliteTransaction transaction = connection.BeginTransaction(deferred: true);
        List<Row> rows = [.. connection.Query<Row>($"SELECT {Columns} FROM calibrations WHERE {PageOrder.Clause}", order)];
        Dictionary<long, int> photos = connection.Query<long>("SELECT calibration_id FROM calibration_photos WHERE calibration_id IN @ids", new { ids = rows.Select(r => r.Id) })
            .CountBy(id => id).ToDictionary();
        return order.PageOf(rows.Select(row => row.ToEntry(photos.GetValueOrDefault(row.Id))), calibration => calibration.Id);
    });

    /// <summary>Keeps what was measured in a photo, or why nothing was; the same bytes are kept once.</summary>
    internal Outcome<BoardPhotoReceipt> Add(long id, string digest, string file, KeptAnswer answer) => database.Run<BoardPhotoReceipt>(connection =>
    {
        using SqliteTransaction transaction = connection.BeginTransaction();
        if (Find(connection, id) is not { } calibration)
            return CameraFailures.NoCalibration(id);
        if (calibration.Photos.FirstOrDefault(p => p.Digest == digest) is { } there)
            return new BoardPhotoReceipt(calibration, there.Number, false);
        if (Full(calibration) is { } full)
            return full;
        int number = calibration.Photos.Select(p => p.Number).DefaultIfEmpty().Max() + 1;
        connection.Execute(
            "INSERT INTO calibration_photos (calibration_id, number, digest, file, added_at, board, refusal) VALUES (@id, @number, @digest, @file, @time, @board, @refusal)",
            new { id, number, digest, file, time = Now(), board = answer.ReportText, refusal = answer.RefusalJson });
        Touch(connection, id);
        KeptCalibration changed = Find(connection, id)!;
        transaction.Commit();
        return new BoardPhotoReceipt(changed, number, true);
    });

    /// <summary>Removes a photo, when the calibration's version is the expected one.</summary>
    public Outcome<KeptCalibration> RemovePhoto(long id, int number, ExpectedVersion expected) => Change(id, expected, (connection, _) =>
    {
        if (connection.Execute("DELETE FROM calibration_photos WHERE calibration_id = @id AND number = @number", new { id, number }) == 0)
            return new Failure(StorageFailures.NotKept, KeptCameraTexts.Word("photo.notKept", id, number), KeptCameraTexts.Get("photo.notKeptHint"));
        Touch(connection, id);
        return Find(connection, id)!;
    });

    /// <summary>Removes a calibration, when its version is the expected one. The camera that it gave stays.</summary>
    public Outcome<KeptCalibration> Remove(long id, ExpectedVersion expected) => Change(id, expected, (connection, calibration) =>
    {
        connection.Execute("DELETE FROM calibrations WHERE id = @id", new { id });
        return calibration;
    });

    /// <summary>Whether the camera of a calibration may have this name; null when it may.</summary>
    internal Failure? Check(CalibrationEntry calibration, string name) =>
        database.Run<string>(connection => CameraStore.Taken(connection, name, calibration.CameraId) is { } taken ? taken : name).TryGet(out _, out Failure? failure) ? null : failure;

    /// <summary>Keeps the camera that a calibration gave, in place of one that it gave before; refused when the calibration has changed meanwhile.</summary>
    internal Outcome<KeptCamera> Finish(KeptCalibration calibration, CameraFinding finding) => database.Run<KeptCamera>(connection =>
    {
        using SqliteTransaction transaction = connection.BeginTransaction();
        long id = calibration.Entry.Id;
        if (Find(connection, id) is not { } now)
            return CameraFailures.NoCalibration(id);
        if (now.Entry.Version != calibration.Entry.Version)
            return StorageFailures.ChangedMeanwhile(KeptCameraTexts.Say("calibration.changed", id), now.Entry.Version);
        Outcome<KeptCamera> written = CameraStore.Write(connection, now.Entry.CameraId, finding.Profile, ReportJson.Write(CameraReport.Of(finding)), Now());
        if (!written.TryGet(out KeptCamera? camera, out _))
            return written;
        connection.Execute("UPDATE calibrations SET camera_id = @camera WHERE id = @id", new { camera = camera.Id, id });
        Touch(connection, id);
        transaction.Commit();
        return camera;
    });

    internal static Failure? Full(KeptCalibration calibration) => calibration.Photos.Count < MostPhotos
        ? null
        : new(CameraFailures.TooManyPhotos, KeptCameraTexts.Word("calibration.full", MostPhotos), KeptCameraTexts.Get("calibration.fullHint"));

    private Outcome<KeptCalibration> Change(long id, ExpectedVersion expected, Func<SqliteConnection, KeptCalibration, Outcome<KeptCalibration>> change) =>
        new VersionedChange<KeptCalibration>(connection => Find(connection, id), () => CameraFailures.NoCalibration(id), kept => kept.Entry.Version, () => KeptCameraTexts.Say("calibration.changed", id)).Run(database, expected, change);

    private void Touch(SqliteConnection connection, long id) =>
        connection.Execute("UPDATE calibrations SET version = version + 1, changed_at = @time WHERE id = @id", new { id, time = Now() });

    private string Now() => Moment.ToText(clock.GetUtcNow());

    private static KeptCalibration? Find(SqliteConnection connection, long id)
    {
        if (connection.QueryFirstOrDefault<Row>($"SELECT {Columns} FROM calibrations WHERE id = @id", new { id }) is not { } row)
            return null;
        KeptBoardPhoto[] photos = [.. connection.Query<PhotoRow>(
            "SELECT number, digest, file, added_at AS AddedAt, board, refusal FROM calibration_photos WHERE calibration_id = @id ORDER BY number", new { id }).Select(p => p.ToPhoto())];
        return new(row.ToEntry(photos.Length), photos);
    }

    private sealed record Row(long Id, long Version, string BegunAt, string ChangedAt, long? CameraId)
    {
        public CalibrationEntry ToEntry(int photos) => new(Id, Version, Moment.Parse(BegunAt), Moment.Parse(ChangedAt), photos, CameraId);
    }

    private sealed record PhotoRow(long Number, string Digest, string File, string AddedAt, string? Board, string? Refusal)
    {
        public KeptBoardPhoto ToPhoto() => new(
            (int)Number,
            Digest,
            File,
            Moment.Parse(AddedAt),
            Board is null ? null : BoardPhotoText.Read(Board, KeptBoardPhoto.NameOf((int)Number)),
            Refusal is null ? null : ((KeptAnswer.Refusal)KeptAnswer.From(null, Refusal)).Failure);
    }
}
