using MarkReader.Application.Storage;
using MarkReader.Quantities;
using Microsoft.Data.Sqlite;

namespace MarkReader.Application.Tests.Storage;

public sealed class DatabaseTests : IDisposable
{
    private static readonly string[] s_scripts = ["migrations/0001-photos-measurements-aims.sql", "migrations/0002-machines.sql", "migrations/0003-visits.sql", "migrations/0004-visit-people-and-keys.sql", "migrations/0005-visit-origins.sql", "migrations/0006-cameras.sql", "migrations/0007-studies.sql", "migrations/0008-card-checks.sql", "migrations/0009-interim-sets.sql", "migrations/0010-study-cards.sql", "migrations/0011-card-check-names.sql"];

    private readonly TemporaryFolder _temporary = new();

    public void Dispose() => _temporary.Dispose();

    [Fact]
    public void Opening_twice_applies_each_migration_once()
    {
        _temporary.Open();
        _temporary.Open();
        Assert.Equal(s_scripts, Query("SELECT ScriptName FROM SchemaVersions"));
        Assert.Equal(["aims", "calibration_photos", "calibrations", "cameras", "card_checks", "interim_checks", "interim_photos", "interim_sets", "machines", "measurements", "photos", "studies", "study_photos", "visit_events", "visit_origins", "visits"], Query(
            "SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite%' AND name <> 'SchemaVersions' ORDER BY name"));
    }

    [Fact]
    public async Task Many_starts_at_once_end_with_one_whole_database()
    {
        Task<Outcome<Database>>[] starts = [.. Enumerable.Range(0, 6).Select(_ => Task.Run(() => Database.Open(_temporary.Folder, TimeSpan.FromSeconds(20))))];
        foreach (Outcome<Database> start in await Task.WhenAll(starts))
            start.ValueOrThrow().Release();
        Assert.Equal(s_scripts, Query("SELECT ScriptName FROM SchemaVersions"));
    }

    [Fact]
    public void A_database_of_a_later_version_is_refused_and_left_as_it_is()
    {
        _temporary.Open().Release();
        Query("INSERT INTO SchemaVersions (ScriptName, Applied) VALUES ('migrations/9999-later.sql', '2031-01-01') RETURNING ScriptName");

        Assert.False(Database.Open(_temporary.Folder).TryGet(out _, out Failure? failure));

        Assert.Equal(StorageFailures.DatabaseNewer, failure.Code);
        Assert.Contains("9999-later.sql", failure.Message, StringComparison.Ordinal);
        Assert.Equal(s_scripts.Length + 1, Query("SELECT ScriptName FROM SchemaVersions").Count);
    }

    [Fact]
    public void A_database_that_another_program_holds_is_refused_after_the_time_limit()
    {
        _temporary.Open().Release();
        using SqliteConnection other = Connect();
        Execute(other, "PRAGMA locking_mode = EXCLUSIVE");
        Execute(other, "BEGIN EXCLUSIVE");

        Assert.False(Database.Open(_temporary.Folder, TimeSpan.FromSeconds(1)).TryGet(out _, out Failure? failure));

        Assert.Equal(StorageFailures.DatabaseLocked, failure.Code);
        Assert.Contains(_temporary.Folder.DatabaseFile, failure.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_write_while_another_program_holds_the_database_is_refused_and_works_afterwards()
    {
        PhotoStore photos = TemporaryFolder.Photos(_temporary.Open());
        byte[] bytes = SomePhotos.Jpeg(1);
        using (SqliteConnection other = Connect())
        {
            Execute(other, "BEGIN IMMEDIATE");
            Assert.False(photos.Keep(bytes).TryGet(out _, out Failure? failure));
            Assert.Equal(StorageFailures.DatabaseLocked, failure.Code);
        }
        Assert.True(photos.Keep(bytes).ValueOrThrow().IsNew);
    }

    [Fact]
    public void A_file_that_is_no_database_is_refused()
    {
        _temporary.Folder.Create().ValueOrThrow();
        File.WriteAllText(_temporary.Folder.DatabaseFile, new string('x', 4096));
        Assert.False(Database.Open(_temporary.Folder).TryGet(out _, out Failure? failure));
        Assert.Equal(StorageFailures.DatabaseDamaged, failure.Code);
    }

    [Fact]
    public void A_start_that_was_killed_while_migrating_leaves_nothing_to_wait_for()
    {
        _temporary.Folder.Create().ValueOrThrow();
        // What a killed start leaves: its lock file, no longer held, and an empty database.
        File.WriteAllText(Path.Combine(_temporary.Folder.Root, "migration.lock"), "");
        File.WriteAllText(_temporary.Folder.DatabaseFile, "");
        _temporary.Open();
        Assert.Equal(s_scripts, Query("SELECT ScriptName FROM SchemaVersions"));
    }

    private SqliteConnection Connect()
    {
        SqliteConnection connection = new($"Data Source={_temporary.Folder.DatabaseFile};Pooling=False");
        connection.Open();
        return connection;
    }

    private static void Execute(SqliteConnection connection, string text)
    {
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = text;
        command.ExecuteNonQuery();
    }

    private List<string> Query(string text)
    {
        using SqliteConnection connection = Connect();
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = text;
        using SqliteDataReader reader = command.ExecuteReader();
        List<string> values = [];
        while (reader.Read())
            values.Add(reader.GetString(0));
        return values;
    }
}
