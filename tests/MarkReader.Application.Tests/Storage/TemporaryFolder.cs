using MarkReader.Application.Storage;
using Microsoft.Data.Sqlite;

namespace MarkReader.Application.Tests.Storage;

/// <summary>A data folder of a test's own, gone afterwards.</summary>
public sealed class TemporaryFolder : IDisposable
{
    private readonly List<Database> _opened = [];

    public DataFolder Folder { get; } = new(Path.Combine(Path.GetTempPath(), "markreader-" + Guid.NewGuid().ToString("N")));

    public Database Open()
    {
        Database database = Database.Open(Folder, TimeSpan.FromSeconds(1)).ValueOrThrow();
        _opened.Add(database);
        return database;
    }

    public static PhotoStore Photos(Database database) => new(database, TimeProvider.System);

    /// <summary>Runs one statement on the file itself, past the stores.</summary>
    public void Execute(string text)
    {
        using SqliteConnection connection = new($"Data Source={Folder.DatabaseFile};Pooling=False");
        connection.Open();
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = text;
        command.ExecuteNonQuery();
    }

    public void Dispose()
    {
        foreach (Database database in _opened)
            database.Release();
        if (Directory.Exists(Folder.Root))
            Directory.Delete(Folder.Root, recursive: true);
    }
}
