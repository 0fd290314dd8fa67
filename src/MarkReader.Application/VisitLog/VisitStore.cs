using System.Text.Json;
using Dapper;
using MarkReader.Application.Machines;
using MarkReader.Application.Practising;
using MarkReader.Application.Reports;
using MarkReader.Application.Storage;
using MarkReader.Quantities;
using Microsoft.Data.Sqlite;

namespace MarkReader.Application.VisitLog;

/// <summary>Keeps visits and their events. <see cref="VisitDesk"/> adds events.</summary>
public sealed class VisitStore(Database database, TimeProvider clock)
{
    /// <summary>The most visits that are kept.</summary>
    public const int Most = 20_000;

    private const string Columns = "id, machine_id AS MachineId, machine_name AS MachineName, note, version, begun_at AS BegunAt, changed_at AS ChangedAt, done_by AS DoneBy, practice";

    private readonly KeptOnce<KeptVisit> _once = new(database, "visits", Most, VisitLogFailures.Full, (connection, id) => Find(connection, id)!);

    /// <summary>Begins a visit with a copy of a machine that is kept, or on a practice machine.</summary>
    /// <param name="request">The request's key; one that is repeated gives the visit that it began. Null: every call begins one.</param>
    public Outcome<KeptVisit> Begin(VisitBeginning beginning, RequestKey? request = null) => _once.Add(request, connection =>
    {
        if (!MachineOf(connection, beginning).TryGet(out NamedMachine? machine, out Failure? failure))
            return failure;
        string? practice = beginning.Practice is { } wanted ? JsonSerializer.Serialize(wanted, ReportJson.Options) : null;
        return new AddedRow(connection.QuerySingle<long>(
            """
            INSERT INTO visits (machine_id, machine_name, machine, note, version, begun_at, changed_at, done_by, practice, request_key, request_digest)
            VALUES (@Id, @Name, @Text, @Note, 1, @time, @time, @DoneBy, @practice, @Key, @Digest) RETURNING id
            """,
            new { machine.Id, machine.Name, machine.Text, beginning.Note, beginning.DoneBy, practice, request?.Key, request?.Digest, time = Now() }));
    });

    /// <summary>The visit with this id.</summary>
    public Outcome<KeptVisit> Find(long id) => database.Run<KeptVisit>(connection =>
    {
        // One view of both tables.
        using SqliteTransaction transaction = connection.BeginTransaction(deferred: true);
        return Find(connection, id) is { } visit ? visit : VisitLogFailures.NotKept(id);
    });

    /// <summary>The visits, newest first, from just before the id <paramref name="before"/> (null: from the newest) on.</summary>
    /// <param name="machine">Only those that were begun with this machine; null for all.</param>
    public Outcome<Page<VisitEntry>> List(long? before, int limit, long? machine = null) => database.Run<Page<VisitEntry>>(connection =>
    {
        PageOrder order = PageOrder.Of(before, limit);
        IEnumerable<Row> rows = connection.Query<Row>(
            $"SELECT {Columns} FROM visits WHERE (@machine IS NULL OR machine_id = @machine) AND {PageOrder.Clause}", new { machine, order.Before, order.More });
        return order.PageOf(rows.Select(row => row.ToEntry()), visit => visit.Id);
    });

    /// <summary>Changes the note and who does the work, when the visit's version is the expected one.</summary>
    public Outcome<KeptVisit> Describe(long id, VisitDescription words, ExpectedVersion expected) => Change(id, expected, (connection, visit) =>
    {
        connection.Execute("UPDATE visits SET note = @Note, done_by = @DoneBy WHERE id = @id", new { id, words.Note, words.DoneBy });
        return visit;
    });

    /// <summary>Removes a visit with its events, when its version is the expected one. The photos stay.</summary>
    public Outcome<KeptVisit> Remove(long id, ExpectedVersion expected) => database.Run<KeptVisit>(connection =>
    {
        using SqliteTransaction transaction = connection.BeginTransaction();
        if (Find(connection, id) is not { } visit)
            return VisitLogFailures.NotKept(id);
        if (!expected.Admits(visit.Entry.Version))
            return StorageFailures.ChangedMeanwhile(VisitLogTexts.Say("visitStore.visit", id), visit.Entry.Version);
        connection.Execute("DELETE FROM visits WHERE id = @id", new { id });
        transaction.Commit();
        return visit;
    });

    /// <summary>Takes back an event that counts, in a visit that was checked without it at this version. It stays in the record.</summary>
    internal Outcome<KeptVisit> TakeBack(long id, int number, long version) => Change(id, ExpectedVersion.OneOf(version), (connection, visit) =>
    {
        connection.Execute(
            "UPDATE visit_events SET taken_back_at = @time, taken_back_version = @version WHERE visit_id = @id AND number = @number",
            new { id, number, version = version + 1, time = Now() });
        return visit;
    });

    /// <summary>Adds an event that was checked against the visit as it was at this version.</summary>
    internal Outcome<KeptVisit> Append(long id, EventDocument e, RequestKey request, long version) => Change(id, ExpectedVersion.OneOf(version), (connection, visit) =>
    {
        connection.Execute(
            """
            INSERT INTO visit_events (visit_id, number, event, photo_id, request_key, request_digest, added_at, added_version)
            VALUES (@id, @number, @Text, @Photo, @Key, @Digest, @time, @added)
            """,
            new { id, number = visit.All.Count + 1, e.Text, e.Photo, request.Key, request.Digest, time = Now(), added = version + 1 });
        return visit;
    });

    // A transaction takes the lock for writing when it begins, so that the version cannot change behind the check.
    private Outcome<KeptVisit> Change(long id, ExpectedVersion expected, Func<SqliteConnection, KeptVisit, Outcome<KeptVisit>> change) => database.Run<KeptVisit>(connection =>
    {
        using SqliteTransaction transaction = connection.BeginTransaction();
        if (Find(connection, id) is not { } visit)
            return VisitLogFailures.NotKept(id);
        if (!expected.Admits(visit.Entry.Version))
            return StorageFailures.ChangedMeanwhile(VisitLogTexts.Say("visitStore.visit", id), visit.Entry.Version);
        if (!change(connection, visit).TryGet(out _, out Failure? failure))
            return failure;
        connection.Execute("UPDATE visits SET version = version + 1, changed_at = @time WHERE id = @id", new { id, time = Now() });
        KeptVisit changed = Find(connection, id)!;
        transaction.Commit();
        return changed;
    });

    private static Outcome<NamedMachine> MachineOf(SqliteConnection connection, VisitBeginning beginning)
    {
        if (beginning.MachineId is { } id)
            return MachineStore.Find(connection, id) is { } kept ? new NamedMachine(kept.Entry.Id, kept.Entry.Name, kept.Text) : MachineFailures.NotKept(id);
        return PracticeMachineFile.Write(beginning.Practice!).TryGet(out string? text, out Failure? failure)
            ? new NamedMachine(null, VisitLogTexts.Say("visitStore.practiceMachine", beginning.Practice!.Seed), text)
            : failure;
    }

    private string Now() => Moment.ToText(clock.GetUtcNow());

    internal static KeptVisit? Find(SqliteConnection connection, long id)
    {
        (Row Row, string Machine)? found = connection.Query<Row, string, (Row, string)?>(
            $"SELECT {Columns}, machine FROM visits WHERE id = @id", (row, machine) => (row, machine), new { id }, splitOn: "machine").FirstOrDefault();
        if (found is not { } visit)
            return null;
        IEnumerable<EventRow> events = connection.Query<EventRow>(
            """
            SELECT number, event AS Text, photo_id AS Photo, request_key AS Key, request_digest AS Digest, added_at AS AddedAt, added_version AS AddedVersion,
                   taken_back_at AS TakenBackAt, taken_back_version AS TakenBackVersion
            FROM visit_events WHERE visit_id = @id ORDER BY number
            """,
            new { id });
        return new(visit.Row.ToEntry(), visit.Machine, [.. events.Select(e => e.ToEvent())])
        {
            Practice = visit.Row.Practice is { } practice ? JsonSerializer.Deserialize<PracticeRequest>(practice, ReportJson.Options) : null,
        };
    }

    private sealed record NamedMachine(long? Id, string Name, string Text);

    // Columns of the table only: of an expression the type is not known while there are no rows.
    private sealed record Row(long Id, long? MachineId, string MachineName, string Note, long Version, string BegunAt, string ChangedAt, string DoneBy, string? Practice)
    {
        public VisitEntry ToEntry() => new(Id, MachineId, MachineName, Note, Version, Moment.Parse(BegunAt), Moment.Parse(ChangedAt), DoneBy, Practice is not null);
    }

    private sealed record EventRow(
        long Number, string Text, string? Photo, string Key, string Digest, string AddedAt, long AddedVersion, string? TakenBackAt, long? TakenBackVersion)
    {
        public KeptEvent ToEvent() => new(
            (int)Number, Text, Photo, new(Key, Digest), Moment.Parse(AddedAt), AddedVersion, TakenBackAt is null ? null : new(Moment.Parse(TakenBackAt), TakenBackVersion!.Value));
    }
}
