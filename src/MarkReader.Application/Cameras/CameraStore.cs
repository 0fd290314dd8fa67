using System.Text;
using Dapper;
using MarkReader.Application.Storage;
using MarkReader.Cameras.Profiles;
using MarkReader.Imaging.Pipeline;
using MarkReader.Quantities;
using Microsoft.Data.Sqlite;

namespace MarkReader.Application.Cameras;

/// <summary>Keeps camera profiles, and hands them to everything that measures photos.</summary>
public sealed class CameraStore(Database database, TimeProvider clock)
{
    /// <summary>The most cameras that are kept.</summary>
    public const int Most = 100;

    private const string Columns = "id, profile, report, version, added_at AS AddedAt, last_used_at AS LastUsedAt";

    /// <summary>Keeps a profile from a file. One that is kept already, under whatever name, is not kept twice: the camera that has it is given.</summary>
    /// <param name="request">The request's key; one that is repeated gives the camera that it added. Null: every call adds one.</param>
    public Outcome<KeptCamera> Add(CameraProfile profile, RequestKey? request = null) => database.Run<KeptCamera>(connection =>
    {
        using SqliteTransaction transaction = connection.BeginTransaction();
        if (!EarlierRow.Find(connection, "cameras", request).TryGet(out EarlierRow? earlier, out Failure? failure))
            return failure;
        if (earlier.Id is { } there)
            return Find(connection, there);
        if (All(connection).Cameras.FirstOrDefault(c => c.Profile.SameContent(profile)) is { } same)
            return same with { WasThere = true };
        Outcome<KeptCamera> written = Write(connection, null, profile, null, Moment.ToText(clock.GetUtcNow()));
        if (!written.TryGet(out KeptCamera? kept, out _))
            return written;
        connection.Execute("UPDATE cameras SET request_key = @Key, request_digest = @Digest WHERE id = @Id", new { request?.Key, request?.Digest, kept.Id });
        transaction.Commit();
        return kept;
    });

    /// <summary>The camera with this id.</summary>
    public Outcome<KeptCamera> Find(long id) => database.Run(connection => Find(connection, id));

    /// <summary>All cameras whose profiles this version can read.</summary>
    public Outcome<KeptCameras> All() => database.Run<KeptCameras>(connection => All(connection));

    /// <summary>The options with the profiles that are kept: the one whose camera and lens a photo's file names is used with it, of several the one made last.</summary>
    public Outcome<MeasureOptions> Known(MeasureOptions? options = null) => All().TryGet(out KeptCameras? kept, out Failure? failure)
        ? (options ?? new()) with { KnownCameras = [.. kept.AsMade.Select(c => c.Profile)] }
        : failure;

    /// <summary>Notes that photos were measured with these profiles now.</summary>
    /// <param name="names">Null for photos that were measured without one.</param>
    public void Used(params IReadOnlyList<string?> names)
    {
        string[] used = [.. names.OfType<string>().Distinct()];
        if (used.Length == 0)
            return;
        // When it cannot be written, the measurement stands all the same.
        _ = database.Run<string>(connection =>
        {
            connection.Execute("UPDATE cameras SET last_used_at = @time WHERE name IN @used", new { time = Moment.ToText(clock.GetUtcNow()), used });
            return "";
        });
    }

    /// <summary>Removes a camera, when its version is the expected one. What was measured with it stays as it was measured.</summary>
    public Outcome<KeptCamera> Remove(long id, ExpectedVersion expected) => database.Run<KeptCamera>(connection =>
    {
        using SqliteTransaction transaction = connection.BeginTransaction();
        if (connection.QueryFirstOrDefault<long?>("SELECT version FROM cameras WHERE id = @id", new { id }) is not { } version)
            return CameraFailures.NotKept(id);
        if (!expected.Admits(version))
            return StorageFailures.ChangedMeanwhile(KeptCameraTexts.Say("camera.changed", id), version);
        Outcome<KeptCamera> removed = Find(connection, id);
        connection.Execute("DELETE FROM cameras WHERE id = @id", new { id });
        transaction.Commit();
        return removed;
    });

    /// <summary>Whether a camera may have this name; null when it may.</summary>
    /// <param name="except">The camera that is to have it, when it is kept already.</param>
    internal static Failure? Taken(SqliteConnection connection, string name, long? except) =>
        connection.QueryFirstOrDefault<long?>("SELECT id FROM cameras WHERE name = @name AND id IS NOT @except", new { name, except }) is null
            ? null
            : new(CameraFailures.NameTaken, KeptCameraTexts.Word("camera.nameTaken", name), KeptCameraTexts.Get("camera.nameTakenHint"));

    /// <summary>Adds a camera, or puts another profile in the place of the one with this id.</summary>
    internal static Outcome<KeptCamera> Write(SqliteConnection connection, long? id, CameraProfile profile, string? report, string time)
    {
        if (Taken(connection, profile.Name, id) is { } taken)
            return taken;
        if (id is null && connection.QuerySingle<int>("SELECT count(*) FROM cameras") >= Most)
            return new Failure(CameraFailures.TooMany, KeptCameraTexts.Word("camera.tooMany", Most), KeptCameraTexts.Get("camera.tooManyHint"));
        var values = new { id, profile.Name, Profile = CameraProfileFile.Write(profile), report, time };
        long written = connection.QuerySingle<long>(
            id is null
                ? "INSERT INTO cameras (name, profile, report, version, added_at) VALUES (@Name, @Profile, @report, 1, @time) RETURNING id"
                : "UPDATE cameras SET name = @Name, profile = @Profile, report = @report, version = version + 1 WHERE id = @id RETURNING id",
            values);
        return Find(connection, written);
    }

    private static Outcome<KeptCamera> Find(SqliteConnection connection, long id)
    {
        if (connection.QueryFirstOrDefault<Row>($"SELECT {Columns} FROM cameras WHERE id = @id", new { id }) is not { } row)
            return CameraFailures.NotKept(id);
        return row.ToCamera() is { } camera ? camera : new Failure(CameraFailures.Unreadable, KeptCameraTexts.Word("camera.damaged", id), KeptCameraTexts.Get("camera.damagedHint"));
    }

    private static KeptCameras All(SqliteConnection connection) =>
        new([.. connection.Query<Row>($"SELECT {Columns} FROM cameras ORDER BY id DESC").Select(row => row.ToCamera()).OfType<KeptCamera>()]);

    private sealed record Row(long Id, string Profile, string? Report, long Version, string AddedAt, string? LastUsedAt)
    {
        public KeptCamera? ToCamera() => CameraProfileFile.Read(Encoding.UTF8.GetBytes(Profile)).TryGet(out CameraProfile? profile, out _)
            ? new(Id, Version, profile, Report, Moment.Parse(AddedAt), LastUsedAt is null ? null : Moment.Parse(LastUsedAt))
            : null;
    }
}
