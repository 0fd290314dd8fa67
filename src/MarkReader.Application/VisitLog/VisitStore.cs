using Dapper;
using MarkReader.Application.Machines;
using MarkReader.Application.Storage;
using MarkReader.Quantities;
using Microsoft.Data.Sqlite;

namespace MarkReader.Application.VisitLog;

/// <summary>Keeps visits and their events. <see cref="VisitDesk"/> adds events.</summary>
public sealed class VisitStore(Database database, TimeProvider clock)
{
    private const string Columns = "id, machine_id AS MachineId, machine_name AS MachineName, note, version, begun_at AS BegunAt, changed_at AS ChangedAt";

    /// <summary>Begins a visit with a copy of a machine that is kept.</summary>
    public Outcome<KeptVisit> Begin(VisitBeginning beginning) => database.Run<KeptVisit>(connection =>
    {
        using SqliteTransaction transaction = connection.BeginTransaction();
        if (MachineStore.Find(connection, beginning.MachineId) is not { } machine)
            return MachineFailures.NotKept(beginning.MachineId);
        long id = connection.QuerySingle<long>(
            """
            INSERT INTO visits (machine_id, machine_name, machine, note, version, begun_at, changed_at)
            VALUES (@Id, @Name, @Text, @Note, 1, @time, @time) RETURNING id
            """,
            new { machine.Entry.Id, machine.Entry.Name, machine.Text, beginning.Note, time = Now() });
        KeptVisit visit = Find(connection, id)!;
        transaction.Commit();
        return visit;
    });

    /// <summary>The visit with this id.</summary>
    public Outcome<KeptVisit> Find(long id) => database.Run<KeptVisit>(connection =>
    {
        // One view of both tables.
        using SqliteTransaction transaction = connection.BeginTransaction(deferred: true);
        return Find(connection, id) is { } visit ? visit : VisitLogFailures.NotKept(id);
    });

    /// <summary>The visits, newest first, from just before the id <paramref name="before"/> (null: from the newest) on.</summary>
    public Outcome<Page<VisitEntry>> List(long? before, int limit) => database.Run<Page<VisitEntry>>(connection =>
    {
        int size = Page<VisitEntry>.Size(limit);
        List<VisitEntry> visits = [.. connection.Query<Row>(
            $"SELECT {Columns}, '' AS Machine FROM visits WHERE @before IS NULL OR id < @before ORDER BY id DESC LIMIT @more",
            new { before, more = size + 1 }).Select(row => row.ToEntry())];
        return Page<VisitEntry>.Of(visits, size, visit => visit.Id);
    });

    /// <summary>Takes back the last event that counts, when the visit's version is the expected one. It stays in the record.</summary>
    public Outcome<KeptVisit> TakeBack(long id, ExpectedVersion expected) => Change(id, expected, (connection, visit) =>
    {
        if (visit.Events.LastOrDefault() is not { } last)
            return new Failure(VisitLogFailures.NothingToTakeBack, $"visit {id} has no event", "see the visit for what counts");
        connection.Execute(
            "UPDATE visit_events SET taken_back_at = @time, taken_back_version = @version WHERE visit_id = @id AND number = @Number",
            new { id, last.Number, version = visit.Entry.Version + 1, time = Now() });
        return visit;
    });

    /// <summary>Adds an event that was checked against the visit as it was at this version.</summary>
    internal Outcome<KeptVisit> Append(long id, EventDocument e, EventRequest request, long version) => Change(id, ExpectedVersion.OneOf(version), (connection, visit) =>
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
            return StorageFailures.ChangedMeanwhile($"visit {id}", visit.Entry.Version);
        if (!change(connection, visit).TryGet(out _, out Failure? failure))
            return failure;
        connection.Execute("UPDATE visits SET version = version + 1, changed_at = @time WHERE id = @id", new { id, time = Now() });
        KeptVisit changed = Find(connection, id)!;
        transaction.Commit();
        return changed;
    });

    private string Now() => Moment.ToText(clock.GetUtcNow());

    private static KeptVisit? Find(SqliteConnection connection, long id)
    {
        if (connection.QueryFirstOrDefault<Row>($"SELECT {Columns}, machine FROM visits WHERE id = @id", new { id }) is not { } row)
            return null;
        IEnumerable<EventRow> events = connection.Query<EventRow>(
            """
            SELECT number, event AS Text, photo_id AS Photo, request_key AS Key, request_digest AS Digest, added_at AS AddedAt, added_version AS AddedVersion,
                   taken_back_at AS TakenBackAt, taken_back_version AS TakenBackVersion
            FROM visit_events WHERE visit_id = @id ORDER BY number
            """,
            new { id });
        return new(row.ToEntry(), row.Machine, [.. events.Select(e => e.ToEvent())]);
    }

    private sealed record Row(long Id, long? MachineId, string MachineName, string Note, long Version, string BegunAt, string ChangedAt, string Machine)
    {
        public VisitEntry ToEntry() => new(Id, MachineId, MachineName, Note, Version, Moment.Parse(BegunAt), Moment.Parse(ChangedAt));
    }

    private sealed record EventRow(
        long Number, string Text, string? Photo, string Key, string Digest, string AddedAt, long AddedVersion, string? TakenBackAt, long? TakenBackVersion)
    {
        public KeptEvent ToEvent() => new(
            (int)Number, Text, Photo, new(Key, Digest), Moment.Parse(AddedAt), AddedVersion, TakenBackAt is null ? null : new(Moment.Parse(TakenBackAt), TakenBackVersion!.Value));
    }
}
