using System.Text;
using Dapper;
using MarkReader.Application.Storage;
using MarkReader.Quantities;
using Microsoft.Data.Sqlite;

namespace MarkReader.Application.Interim;

/// <summary>Keeps sets of reference photos with what was measured in them. <see cref="InterimDesk"/> measures.</summary>
public sealed class InterimStore(Database database)
{
    /// <summary>The most sets that are kept.</summary>
    public const int Most = 20;

    /// <summary>The most versions of which a set keeps the result; the oldest goes.</summary>
    public const int MostChecks = 50;

    private readonly KeptOnce<KeptInterimSet> _once = new(database, "interim_sets", Most, Full, (connection, id) => Find(connection, id)!);

    /// <summary>The set with this id.</summary>
    public Outcome<KeptInterimSet> Find(long id) => database.Run<KeptInterimSet>(connection =>
    {
        // One view of both tables.
        using SqliteTransaction transaction = connection.BeginTransaction(deferred: true);
        return Find(connection, id) is { } set ? set : NotKept(id);
    });

    /// <summary>The sets, newest first, from just before the id <paramref name="before"/> (null: from the newest) on.</summary>
    public Outcome<Page<KeptInterimSet>> List(long? before, int limit) => database.Run<Page<KeptInterimSet>>(connection =>
    {
        PageOrder order = PageOrder.Of(before, limit);
        using SqliteTransaction transaction = connection.BeginTransaction(deferred: true);
        long[] ids = [.. connection.Query<long>($"SELECT id FROM interim_sets WHERE {PageOrder.Clause}", order)];
        return order.PageOf(ids.Select(id => Find(connection, id)!), set => set.Id);
    });

    /// <summary>How many sets a version of the program has neither kept nor measured; 0 when the database cannot be asked.</summary>
    public int Due(string program) => database.Run<Counted>(connection => new Counted(connection.QuerySingle<int>(
        """
        SELECT count(*) FROM interim_sets AS s WHERE s.program <> @program
        AND NOT EXISTS (SELECT 1 FROM interim_checks AS c WHERE c.set_id = s.id AND c.program = @program)
        """,
        new { program }))).TryGet(out Counted? due, out _) ? due.Count : 0;

    /// <summary>Removes a set. Its photos stay; <see cref="InterimDesk.Remove"/> removes those that nothing else needs.</summary>
    internal Outcome<KeptInterimSet> Remove(long id) => database.Run<KeptInterimSet>(connection =>
    {
        using SqliteTransaction transaction = connection.BeginTransaction();
        if (Find(connection, id) is not { } set)
            return NotKept(id);
        connection.Execute("DELETE FROM interim_sets WHERE id = @id", new { id });
        transaction.Commit();
        return set;
    });

    /// <summary>The set that a request kept; null when it kept none yet and there is room.</summary>
    internal Outcome<EarlierKept<KeptInterimSet>> Earlier(RequestKey? request) => _once.Earlier(request);

    /// <summary>Keeps a set whose photos are kept; a request that is repeated gives the set that it kept.</summary>
    internal Outcome<KeptInterimSet> Add(string name, InterimRecord record, RequestKey? request) => _once.Add(request, connection =>
    {
        long id = connection.QuerySingle<long>(
            "INSERT INTO interim_sets (name, record, request_key, request_digest) VALUES (@name, @record, @Key, @Digest) RETURNING id",
            new { name, record = InterimFile.Write(record), request?.Key, request?.Digest });
        foreach (InterimPhoto photo in record.Photos)
        {
            // Whoever deletes photos may have been here meanwhile.
            if (connection.Execute("INSERT INTO interim_photos (set_id, photo_id) SELECT @id, id FROM photos WHERE id = @Digest", new { id, photo.Digest }) == 0)
                return StorageFailures.NoPhoto(photo.Digest);
        }

        return new AddedRow(id);
    });

    /// <summary>Keeps what a version measured, in place of an earlier measurement by the same version.</summary>
    internal Outcome<KeptInterimSet> AddCheck(long id, InterimRecord record) => database.Run<KeptInterimSet>(connection =>
    {
        using SqliteTransaction transaction = connection.BeginTransaction();
        if (Find(connection, id) is null)
            return NotKept(id);
        connection.Execute("DELETE FROM interim_checks WHERE set_id = @id AND program = @Program", new { id, record.Program });
        connection.Execute("INSERT INTO interim_checks (set_id, record) VALUES (@id, @record)", new { id, record = InterimFile.Write(record) });
        connection.Execute(
            "DELETE FROM interim_checks WHERE set_id = @id AND id NOT IN (SELECT id FROM interim_checks WHERE set_id = @id ORDER BY id DESC LIMIT @MostChecks)", new { id, MostChecks });
        KeptInterimSet kept = Find(connection, id)!;
        transaction.Commit();
        return kept;
    });

    private static Failure Full() => new(InterimFailures.TooManySets, InterimTexts.Word("store.full", Most), InterimTexts.Get("store.full.hint"));

    private static Failure NotKept(long id) => new(StorageFailures.NotKept, InterimTexts.Word("store.notKept", id), InterimTexts.Get("store.notKept.hint"));

    private static KeptInterimSet? Find(SqliteConnection connection, long id) => connection.QueryFirstOrDefault<Row>("SELECT id, name, record FROM interim_sets WHERE id = @id", new { id }) is { } row
        ? new(row.Id, row.Name, Read(row.Record), [.. connection.Query<string>("SELECT record FROM interim_checks WHERE set_id = @id ORDER BY id DESC", new { id }).Select(Read)])
        : null;

    private static InterimRecord Read(string record) => InterimFile.Read(Encoding.UTF8.GetBytes(record)).ValueOrThrow();

    private sealed record Row(long Id, string Name, string Record);

    private sealed record Counted(int Count);
}
