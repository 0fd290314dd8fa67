using System.Text.Json;
using Dapper;
using MarkReader.Application.Reports;
using MarkReader.Application.Storage;
using MarkReader.Quantities;
using Microsoft.Data.Sqlite;

namespace MarkReader.Application.CardChecks;

/// <summary>Keeps checks of printed cards. <see cref="CardCheckDesk"/> makes them.</summary>
public sealed class CardCheckStore(Database database, TimeProvider clock)
{
    /// <summary>The most checks that are kept.</summary>
    public const int Most = 500;

    private const string Columns = "id, name, camera_id AS CameraId, report, added_at AS AddedAt";

    /// <summary>The check with this id.</summary>
    public Outcome<KeptCardCheck> Find(long id) => database.Run(connection => Find(connection, id));

    /// <summary>The checks, newest first, from just before the id <paramref name="before"/> (null: from the newest) on.</summary>
    public Outcome<Page<KeptCardCheck>> List(long? before, int limit) => database.Run<Page<KeptCardCheck>>(connection =>
    {
        PageOrder order = PageOrder.Of(before, limit);
        return order.PageOf(connection.Query<Row>($"SELECT {Columns} FROM card_checks WHERE {PageOrder.Clause}", order).Select(row => row.ToCheck()), check => check.Id);
    });

    /// <summary>Removes a check.</summary>
    public Outcome<KeptCardCheck> Remove(long id) => database.Run<KeptCardCheck>(connection =>
    {
        using SqliteTransaction transaction = connection.BeginTransaction();
        Outcome<KeptCardCheck> removed = Find(connection, id);
        connection.Execute("DELETE FROM card_checks WHERE id = @id", new { id });
        transaction.Commit();
        return removed;
    });

    /// <summary>The check that a request made; null when it made none yet.</summary>
    internal Outcome<EarlierCheck> Earlier(RequestKey? request) => database.Run<EarlierCheck>(connection =>
    {
        if (!EarlierRow.Find(connection, "card_checks", request).TryGet(out EarlierRow? earlier, out Failure? failure))
            return failure;
        if (earlier.Id is not { } there)
            return connection.QuerySingle<int>("SELECT count(*) FROM card_checks") < Most ? new EarlierCheck(null) : Full();
        return Find(connection, there).TryGet(out KeptCardCheck? check, out failure) ? new EarlierCheck(check) : failure;
    });

    /// <summary>Keeps a check; a request that is repeated gives the check that it made.</summary>
    internal Outcome<KeptCardCheck> Add(long cameraId, string name, CardCheckReport report, RequestKey? request) => database.Run<KeptCardCheck>(connection =>
    {
        using SqliteTransaction transaction = connection.BeginTransaction();
        if (!EarlierRow.Find(connection, "card_checks", request).TryGet(out EarlierRow? earlier, out Failure? failure))
            return failure;
        if (earlier.Id is { } there)
            return Find(connection, there);
        if (connection.QuerySingle<int>("SELECT count(*) FROM card_checks") >= Most)
            return Full();
        long id = connection.QuerySingle<long>(
            "INSERT INTO card_checks (camera_id, name, report, added_at, request_key, request_digest) VALUES ((SELECT id FROM cameras WHERE id = @cameraId), @name, @report, @time, @Key, @Digest) RETURNING id",
            new { cameraId, name, report = ReportJson.Write(report), time = Moment.ToText(clock.GetUtcNow()), request?.Key, request?.Digest });
        Outcome<KeptCardCheck> kept = Find(connection, id);
        transaction.Commit();
        return kept;
    });

    private static Failure Full() => new(CardCheckInputFailures.TooManyChecks, CardCheckTexts.Word("store.full", Most), CardCheckTexts.Get("store.fullHint"));

    private static Outcome<KeptCardCheck> Find(SqliteConnection connection, long id) => connection.QueryFirstOrDefault<Row>($"SELECT {Columns} FROM card_checks WHERE id = @id", new { id }) is { } row
        ? row.ToCheck()
        : new Failure(StorageFailures.NotKept, CardCheckTexts.Word("store.notKept", id), CardCheckTexts.Get("store.notKeptHint"));

    private sealed record Row(long Id, string Name, long? CameraId, string Report, string AddedAt)
    {
        public KeptCardCheck ToCheck() => new(Id, Name, Moment.Parse(AddedAt), CameraId, JsonSerializer.Deserialize<CardCheckReport>(Report, ReportJson.Options)!);
    }
}

/// <param name="Check">Null for a request that is new.</param>
internal sealed record EarlierCheck(KeptCardCheck? Check);
