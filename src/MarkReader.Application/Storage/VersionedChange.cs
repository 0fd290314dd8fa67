using MarkReader.Quantities;
using Microsoft.Data.Sqlite;

namespace MarkReader.Application.Storage;

/// <summary>Changes something that is kept with a version.</summary>
/// <param name="Find">What is kept now; null when it is not, or no longer.</param>
/// <param name="NotKept">The refusal for that.</param>
/// <param name="Version">Of what is kept.</param>
/// <param name="Name">What a refusal calls it.</param>
internal sealed record VersionedChange<T>(Func<SqliteConnection, T?> Find, Func<Failure> NotKept, Func<T, long> Version, Func<string> Name)
    where T : class
{
    /// <summary>Changes it when its version is the expected one; a change that is refused leaves everything as it was.</summary>
    public Outcome<T> Run(Database database, ExpectedVersion expected, Func<SqliteConnection, T, Outcome<T>> change) => database.Run<T>(connection =>
    {
        // The transaction takes the lock for writing when it begins, so that the version cannot change behind the check.
        using SqliteTransaction transaction = connection.BeginTransaction();
        if (Find(connection) is not { } kept)
            return NotKept();
        if (!expected.Admits(Version(kept)))
            return StorageFailures.ChangedMeanwhile(Name(), Version(kept));
        Outcome<T> changed = change(connection, kept);
        if (changed.TryGet(out _, out _))
            transaction.Commit();
        return changed;
    });
}
