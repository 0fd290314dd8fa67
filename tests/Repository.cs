using System.Reflection;

namespace MarkReader.Tests;

/// <summary>Where the repository's own files are; compiled into every test project.</summary>
internal static class Repository
{
    public static string Root { get; } = typeof(Repository).Assembly.GetCustomAttributes<AssemblyMetadataAttribute>().Single(a => a.Key == "RepositoryRoot").Value!;

    /// <summary>The photos with known truth.</summary>
    public static string Fixtures => FixturesOf("photos");

    /// <param name="name">Of a folder in fixtures.</param>
    public static string FixturesOf(string name) => Path.Combine(Root, "fixtures", name);
}
