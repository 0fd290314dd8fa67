using MarkReader.Application.Storage;

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

    public void Dispose()
    {
        foreach (Database database in _opened)
            database.Release();
        if (Directory.Exists(Folder.Root))
            Directory.Delete(Folder.Root, recursive: true);
    }
}
