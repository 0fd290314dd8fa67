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

    private readonly KeptOnce<KeptCardCheck> _once = new(database, "card_checks", Most, Full, (connection, id) => Find(connection, id)!);

    /// <summary>The check with this id.</summary>
    public Outcome<KeptCardCheck> Find(long id) => database.Run(connection => Found(connection, id));

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
        Outcome<KeptCardCheck> removed = Found(connection, id);
        connection.Execute("DELETE FROM card_checks WHERE id = @id", new { id });
        transaction.Commit();
        return removed;
    });

    /// <summary>The check that a request made; null when it made none yet.</summary>
    internal Outcome<EarlierKept<KeptCardCheck>> Earlier(RequestKey? request) => _once.Earlier(request);

    /// <summary>Keeps a check; a request that is repeated gives the check that it made.</summary>
    internal Outcome<KeptCardCheck> Add(long cameraId, string name, CardCheckReport report, RequestKey? request) => _once.Add(request, connection => new AddedRow(connection.QuerySingle<long>(
        "INSERT INTO card_checks (camera_id, name, report, added_at, request_key, request_digest) VALUES ((SELECT id FROM cameras WHERE id = @cameraId), @name, @report, @time, @Key, @Digest) RETURNING id",
        new { cameraId, name, report = ReportJson.Write(report), time = Moment.ToText(clock.GetUtcNow()), request?.Key, request?.Digest })));

    private static Failure Full() => new(CardCheckInputFailures.TooManyChecks, CardCheckTexts.Word("store.full", Most), CardCheckTexts.Get("store.fullHint"));

    private static Outcome<KeptCardCheck> Found(SqliteConnection connection, long id) =>
        Find(connection, id) is { } check ? check : new Failure(StorageFailures.NotKept, CardCheckTexts.Word("store.notKept", id), CardCheckTexts.Get("store.notKeptHint"));

    private static KeptCardCheck? Find(SqliteConnection connection, long id) => connection.QueryFirstOrDefault<Row>($"SELECT {Columns} FROM card_checks WHERE id = @id", new { id })?.ToCheck();

    private sealed record Row(long Id, string Name, long? CameraId, string Report, string AddedAt)
    {
        public KeptCardCheck ToCheck() => new(Id, Name, Moment.Parse(AddedAt), CameraId, JsonSerializer.Deserialize<CardCheckReport>(Report, ReportJson.Options)!);
    }
}
