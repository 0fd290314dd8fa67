using System.Reflection;

namespace MarkReader.Application.Storage;

/// <summary>The version of the program, kept with every answer.</summary>
public static class ProgramVersion
{
    private const int CommitDigits = 8;

    /// <summary>Version and, after a plus sign, the start of the commit it was built from: 1.0.0+1a2b3c4d.</summary>
    public static string Current { get; } = Read();

    private static string Read()
    {
        string[] parts = typeof(ProgramVersion).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()!.InformationalVersion.Split('+', 2);
        return parts.Length == 1 ? parts[0] : $"{parts[0]}+{parts[1][..Math.Min(CommitDigits, parts[1].Length)]}";
    }
}
