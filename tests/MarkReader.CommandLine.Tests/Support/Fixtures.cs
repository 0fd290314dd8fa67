using System.Reflection;

namespace MarkReader.CommandLine.Tests.Support;

/// <summary>The repository's own photos.</summary>
internal static class Fixtures
{
    public static string Folder(string name) => Path.Combine(
        typeof(Fixtures).Assembly.GetCustomAttributes<AssemblyMetadataAttribute>().Single(a => a.Key == "RepositoryRoot").Value!, "fixtures", name);
}
