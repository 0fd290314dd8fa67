using MarkReader.Quantities;
using Microsoft.Data.Sqlite;
using static SQLitePCL.raw;

namespace MarkReader.Application.Storage;

/// <summary>Tells the faults of the machine (locked, full, damaged), which are refusals, from faults of the program, which are thrown.</summary>
internal static class SqliteFaults
{
    /// <summary>The refusal for this fault, or null when it is a fault of the program.</summary>
    public static Failure? Translate(SqliteException fault, string file) => fault.SqliteErrorCode switch
    {
        SQLITE_BUSY or SQLITE_LOCKED => Locked(file),
        SQLITE_FULL or SQLITE_IOERR => new(
            StorageFailures.StorageFull, $"the disk does not take the data ({file})", "free some space on it, then try again"),
        SQLITE_READONLY or SQLITE_CANTOPEN or SQLITE_PERM => StorageFailures.FolderUnusable(
            Path.GetDirectoryName(file)!, "the database in it cannot be opened for writing"),
        SQLITE_NOTADB or SQLITE_CORRUPT => new(
            StorageFailures.DatabaseDamaged,
            $"{file} is damaged or is not a database",
            "move it away, or put back a copy of it; the photos beside it are not affected"),
        _ => null,
    };

    public static Failure Locked(string file) => new(
        StorageFailures.DatabaseLocked,
        $"another program is using the database {file}",
        "end that program, or wait until it is done, then try again");
}
