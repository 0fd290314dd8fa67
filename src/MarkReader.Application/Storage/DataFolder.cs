using MarkReader.Quantities;

namespace MarkReader.Application.Storage;

/// <summary>The folder in which everything that is kept lies: the database, the original photos, the log files.</summary>
/// <param name="Root">Full path.</param>
public sealed record DataFolder(string Root)
{
    /// <summary>The environment variable that names the folder.</summary>
    public const string Variable = "MARKREADER_DATA";

    private const UnixFileMode OwnerOnly = UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute;

    public string DatabaseFile => Path.Combine(Root, "markreader.db");

    public string Photos => Path.Combine(Root, "photos");

    public string Logs => Path.Combine(Root, "logs");

    /// <summary>The key by which phones are let in; for its owner's eyes alone.</summary>
    public string PhoneKeyFile => Path.Combine(Root, "phone-key");

    /// <summary>Held while the database is brought up to date; the system lets go of it when its holder dies.</summary>
    internal string MigrationLock => Path.Combine(Root, "migration.lock");

    /// <summary>The folder that <see cref="Variable"/> names, else markreader in $XDG_DATA_HOME, else in ~/.local/share.</summary>
    public static DataFolder Locate(Func<string, string?> environment)
    {
        if (environment(Variable) is { Length: > 0 } named)
            return new(Path.GetFullPath(named));
        // The XDG base directory specification: a relative path is to be ignored.
        string? shared = environment("XDG_DATA_HOME");
        if (!Path.IsPathFullyQualified(shared ?? ""))
            shared = Path.Combine(environment("HOME") ?? Environment.GetFolderPath(Environment.SpecialFolder.UserProfile), ".local", "share");
        return new(Path.GetFullPath(Path.Combine(shared!, "markreader")));
    }

    /// <summary>Makes the folders that are missing, readable by their owner alone.</summary>
    public Outcome<DataFolder> Create()
    {
        try
        {
            foreach (string folder in (string[])[Root, Photos, Logs])
                Make(folder);
            return this;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            return StorageFailures.FolderUnusable(Root, fault.Message);
        }
    }

    private static void Make(string folder)
    {
        if (OperatingSystem.IsWindows())
            Directory.CreateDirectory(folder);
        else
            Directory.CreateDirectory(folder, OwnerOnly);
    }
}
