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
            StorageFailures.StorageFull, StorageTexts.Word("sqliteFaults.diskDoesNotTakeData", file), StorageTexts.Get("sqliteFaults.freeSomeSpaceOnThen")),
        SQLITE_READONLY or SQLITE_CANTOPEN or SQLITE_PERM => StorageFailures.FolderUnusable(
            Path.GetDirectoryName(file)!, StorageTexts.Get("sqliteFaults.databaseInCannotBeOpened")),
        SQLITE_NOTADB or SQLITE_CORRUPT => new(
            StorageFailures.DatabaseDamaged,
            StorageTexts.Word("sqliteFaults.damagedOrNotDatabase", file),
            StorageTexts.Get("sqliteFaults.moveAwayOrPutBack")),
        _ => null,
    };

    public static Failure Locked(string file) => new(
        StorageFailures.DatabaseLocked,
        StorageTexts.Word("sqliteFaults.anotherProgramUsingDatabase", file),
        StorageTexts.Get("sqliteFaults.endThatProgramOrWait"));
}
