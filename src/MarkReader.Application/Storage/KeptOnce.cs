using Dapper;
using MarkReader.Quantities;
using Microsoft.Data.Sqlite;

namespace MarkReader.Application.Storage;

/// <summary>Things of which a request adds one, however often it is sent, and of which there are only so many.</summary>
/// <typeparam name="T">What is kept.</typeparam>
/// <param name="table">With the columns id, request_key and request_digest; put into statements as it is.</param>
/// <param name="most">How many there may be.</param>
/// <param name="full">The refusal when there are as many.</param>
/// <param name="find">The thing with an id, which is there.</param>
internal sealed class KeptOnce<T>(Database database, string table, int most, Func<Failure> full, Func<SqliteConnection, long, T> find)
    where T : class
{
    /// <summary>What the request added before; nothing when it is new and there is room. For those who must work long before they can add.</summary>
    public Outcome<EarlierKept<T>> Earlier(RequestKey? request) => database.Run<EarlierKept<T>>(connection =>
    {
        using SqliteTransaction transaction = connection.BeginTransaction(deferred: true);
        return Look(connection, request);
    });

    /// <summary>Adds it, or gives what the request added before.</summary>
    /// <param name="insert">Adds it with the request's key and digest.</param>
    public Outcome<T> Add(RequestKey? request, Func<SqliteConnection, Outcome<AddedRow>> insert) => database.Run<T>(connection =>
    {
        using SqliteTransaction transaction = connection.BeginTransaction();
        if (!Look(connection, request).TryGet(out EarlierKept<T>? earlier, out Failure? failure))
            return failure;
        if (earlier.Kept is { } there)
            return there;
        if (!insert(connection).TryGet(out AddedRow? added, out failure))
            return failure;
        T kept = find(connection, added.Id);
        transaction.Commit();
        return kept;
    });

    private Outcome<EarlierKept<T>> Look(SqliteConnection connection, RequestKey? request)
    {
        if (!EarlierRow.Find(connection, table, request).TryGet(out EarlierRow? earlier, out Failure? failure))
            return failure;
        if (earlier.Id is { } there)
            return new EarlierKept<T>(find(connection, there));
        return connection.QuerySingle<int>($"SELECT count(*) FROM {table}") < most ? new EarlierKept<T>(null) : full();
    }
}

/// <param name="Kept">Null for a request that is new.</param>
internal sealed record EarlierKept<T>(T? Kept)
    where T : class;

/// <summary>A row that was added.</summary>
internal sealed record AddedRow(long Id);
