using MarkReader.Quantities;

namespace MarkReader.CommandLine.Output;

/// <summary>The folder for every stage's picture.</summary>
internal static class DebugFolder
{
    /// <summary>Makes the folder; null when it can be written to or none is asked for.</summary>
    public static Failure? Prepare(string? path)
    {
        if (path is null)
            return null;
        try
        {
            Directory.CreateDirectory(path);
            string probe = Path.Combine(path, $".{Environment.ProcessId}.part");
            File.WriteAllBytes(probe, []);
            File.Delete(probe);
            return null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return new(CommandLineFailures.OutputNotWritable, $"the folder '{path}' cannot be written to", "name a folder that you may write to with --debug-dir");
        }
    }
}
