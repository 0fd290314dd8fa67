using System.Globalization;
using Dapper;
using MarkReader.Quantities;
using Microsoft.Data.Sqlite;

namespace MarkReader.Application.Storage;

/// <summary>A row that an earlier request with the same key added.</summary>
/// <param name="Id">Null when there was no such request.</param>
internal sealed record EarlierRow(long? Id)
{
    /// <summary>Looks a request's key up in a table with the columns request_key and request_digest; a key that came with other bytes is refused.</summary>
    /// <param name="table">Its name, which is put into the statement as it is.</param>
    /// <param name="request">Null: there is no earlier one.</param>
    public static Outcome<EarlierRow> Find(SqliteConnection connection, string table, RequestKey? request)
    {
        if (request is null || connection.QueryFirstOrDefault<(long Id, string Digest)?>($"SELECT id, request_digest FROM {table} WHERE request_key = @Key", request) is not { } row)
            return new EarlierRow((long?)null);
        return row.Digest == request.Digest ? new EarlierRow(row.Id) : RequestKey.Reused();
    }
}

/// <summary>Which page of a list is asked for; the parameters of <see cref="Clause"/>.</summary>
/// <param name="Before">The id from just before which it starts; null: from the newest.</param>
internal sealed record PageOrder(long? Before, int Size)
{
    /// <summary>Behind the conditions of a query by id: newest first, with one more than the page holds, which tells that another follows.</summary>
    public const string Clause = "(@Before IS NULL OR id < @Before) ORDER BY id DESC LIMIT @More";

    public int More => Size + 1;

    /// <param name="limit">How many items are asked for.</param>
    public static PageOrder Of(long? before, int limit) => new(before, Math.Clamp(limit, 1, Page<object>.Limit));

    public Page<T> PageOf<T>(IEnumerable<T> read, Func<T, long> id)
    {
        T[] all = [.. read];
        return new([.. all.Take(Size)], all.Length > Size ? id(all[Size - 1]).ToString(CultureInfo.InvariantCulture) : null);
    }
}
