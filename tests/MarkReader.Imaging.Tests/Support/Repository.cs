using System.Reflection;

namespace MarkReader.Imaging.Tests.Support;

/// <summary>Where the repository's own files are.</summary>
internal static class Repository
{
    public static string Root { get; } = typeof(Repository).Assembly.GetCustomAttributes<AssemblyMetadataAttribute>().Single(a => a.Key == "RepositoryRoot").Value!;

    public static string Fixtures => Path.Combine(Root, "fixtures", "photos");
}
