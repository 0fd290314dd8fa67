using System.Diagnostics;
using DbUp;
using DbUp.Engine;
using MarkReader.Quantities;
using Microsoft.Data.Sqlite;

namespace MarkReader.Application.Storage;

/// <summary>Brings a database file up to date with the scripts built into this assembly.</summary>
/// <remarks>
/// One program at a time: a file lock that the system frees when its holder dies, so that a killed start leaves nothing behind
/// for which later starts would wait. All scripts run in one transaction.
/// </remarks>
internal static class Migration
{
    private const string Prefix = "migrations/";

    public static Failure? Apply(DataFolder folder, string connectionString, TimeSpan limit)
    {
        using FileStream? turn = TakeTurn(folder.MigrationLock, limit);
        if (turn is null)
            return SqliteFaults.Locked(folder.DatabaseFile);
        UseWriteAheadLog(connectionString);

        UpgradeEngine engine = DeployChanges.To
            .SqliteDatabase(connectionString)
            .WithScriptsEmbeddedInAssembly(typeof(Migration).Assembly, name => name.StartsWith(Prefix, StringComparison.Ordinal))
            .WithTransaction()
            .WithExecutionTimeout(limit)
            .LogToNowhere()
            .Build();
        HashSet<string> known = [.. engine.GetDiscoveredScripts().Select(script => script.Name)];
        if (engine.GetExecutedScripts().FirstOrDefault(name => !known.Contains(name)) is { } later)
            return Newer(folder.DatabaseFile, later);

        DatabaseUpgradeResult result = engine.PerformUpgrade();
        if (result.Successful)
            return null;
        if (result.Error is SqliteException fault && SqliteFaults.Translate(fault, folder.DatabaseFile) is { } refusal)
            return refusal;
        throw new InvalidOperationException($"Migration {result.ErrorScript?.Name} failed.", result.Error);
    }

    private static void UseWriteAheadLog(string connectionString)
    {
        using SqliteConnection connection = new(connectionString);
        connection.Open();
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = "PRAGMA journal_mode = WAL";
        command.ExecuteNonQuery();
    }

    private static FileStream? TakeTurn(string path, TimeSpan limit)
    {
        Stopwatch waited = Stopwatch.StartNew();
        while (true)
        {
            try
            {
                return new(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
            }
            catch (IOException) when (waited.Elapsed < limit)
            {
                Thread.Sleep(50);
            }
            catch (IOException)
            {
                return null;
            }
        }
    }

    private static Failure Newer(string file, string script) => new(
        StorageFailures.DatabaseNewer,
        StorageTexts.Word("migration.databaseWasWrittenByLater", file, script[(script.LastIndexOf('/') + 1)..]),
        StorageTexts.Word("migration.startThatVersionOrName", DataFolder.Variable));
}
