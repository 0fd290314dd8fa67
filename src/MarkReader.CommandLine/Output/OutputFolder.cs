using MarkReader.Quantities;

namespace MarkReader.CommandLine.Output;

/// <summary>A folder into which several files are written.</summary>
internal static class OutputFolder
{
    /// <summary>Makes the folder; null when it can be written to or none is asked for.</summary>
    /// <param name="option">The option that names it.</param>
    public static Failure? Prepare(string? path, string option)
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
            return new(CommandLineFailures.OutputNotWritable, OutputTexts.Word("outputFolder.folderCannotBeWritten", path), OutputTexts.Word("outputFolder.nameFolderThatYouMay", option));
        }
    }
}
