using MarkReader.Quantities;
using Microsoft.Data.Sqlite;

namespace MarkReader.Application.Storage;

/// <summary>The database file, brought up to date when it is opened.</summary>
/// <remarks>Every change is on the disk when a method returns (write-ahead log, synchronous FULL).</remarks>
public sealed class Database
{
    private readonly string _connection;

    private Database(DataFolder folder, string connection) => (Folder, _connection) = (folder, connection);

    /// <summary>How long to wait for another program that writes, unless told otherwise.</summary>
    public static TimeSpan DefaultTimeLimit { get; } = TimeSpan.FromSeconds(5);

    public DataFolder Folder { get; }

    /// <summary>Opens the database of a folder, making both where they are missing and applying the migrations that it lacks.</summary>
    /// <param name="folder">Where it lies.</param>
    /// <param name="timeLimit">How long to wait for another program, at least one second; <see cref="DefaultTimeLimit"/> when null.</param>
    public static Outcome<Database> Open(DataFolder folder, TimeSpan? timeLimit = null)
    {
        if (!folder.Create().TryGet(out _, out Failure? unusable))
            return unusable;
        TimeSpan limit = timeLimit ?? DefaultTimeLimit;
        ArgumentOutOfRangeException.ThrowIfLessThan(limit, TimeSpan.FromSeconds(1), nameof(timeLimit));
        string connection = new SqliteConnectionStringBuilder
        {
            DataSource = folder.DatabaseFile,
            ForeignKeys = true,
            DefaultTimeout = (int)Math.Ceiling(limit.TotalSeconds),
        }.ToString();
        Database database = new(folder, connection);
        return database.Guard<Database>(() =>
            Migration.Apply(folder, connection, limit) is { } refused ? refused : database);
    }

    /// <summary>Lets go of the file: pooled connections are closed.</summary>
    public void Release()
    {
        using SqliteConnection connection = new(_connection);
        SqliteConnection.ClearPool(connection);
    }

    /// <summary>Runs one piece of work on a connection of its own.</summary>
    internal Outcome<T> Run<T>(Func<SqliteConnection, Outcome<T>> work)
        where T : class => Guard(() =>
    {
        using SqliteConnection connection = new(_connection);
        connection.Open();
        using SqliteCommand full = connection.CreateCommand();
        full.CommandText = "PRAGMA synchronous = FULL";
        full.ExecuteNonQuery();
        return work(connection);
    });

    private Outcome<T> Guard<T>(Func<Outcome<T>> work)
        where T : class
    {
        try
        {
            return work();
        }
        catch (SqliteException fault) when (SqliteFaults.Translate(fault, Folder.DatabaseFile) is { } refusal)
        {
            return refusal;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            return StorageFailures.FolderUnusable(Folder.Root, fault.Message);
        }
    }
}
