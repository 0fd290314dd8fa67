namespace MarkReader.CommandLine.Tests.Support;

/// <summary>The repository's own photos.</summary>
internal static class Fixtures
{
    public static string Folder(string name) => Repository.FixturesOf(name);
}
