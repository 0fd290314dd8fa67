using MarkReader.Quantities;

namespace MarkReader.CommandLine.Output;

/// <summary>Writes a whole file or none: to a temporary name beside it, then moved into place.</summary>
internal static class OutputFile
{
    /// <summary>Null when the file is written, else why not.</summary>
    public static Failure? Write(string path, ReadOnlySpan<byte> bytes)
    {
        string temporary = "";
        try
        {
            string full = Path.GetFullPath(path);
            if (Directory.Exists(full))
                return Refusal(path, OutputTexts.Get("outputFile.folder"));
            string folder = Path.GetDirectoryName(full)!;
            if (!Directory.Exists(folder))
                return Refusal(path, OutputTexts.Get("outputFile.folderDoesNotExist"));
            temporary = Path.Combine(folder, $".{Path.GetFileName(full)}.{Environment.ProcessId}.part");
            File.WriteAllBytes(temporary, bytes);
            File.Move(temporary, full, overwrite: true);
            return null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            Remove(temporary);
            return Refusal(path, e is UnauthorizedAccessException ? OutputTexts.Get("outputFile.permissionDenied") : OutputTexts.Get("outputFile.diskOrNameDoesNot"));
        }
    }

    /// <summary>What is wrong with the place before anything is worked out for it, or null; writing may still fail.</summary>
    public static Failure? Check(string path) =>
        string.IsNullOrWhiteSpace(path) || path.Contains('\0', StringComparison.Ordinal) ? Refusal(path, OutputTexts.Get("outputFile.noFileName"))
        : Directory.Exists(path) ? Refusal(path, OutputTexts.Get("outputFile.folder"))
        : Directory.Exists(Path.GetDirectoryName(Path.GetFullPath(path))) ? null
        : Refusal(path, OutputTexts.Get("outputFile.folderDoesNotExist"));

    private static void Remove(string temporary)
    {
        try
        {
            if (temporary.Length > 0)
                File.Delete(temporary);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // Nothing more can be done; the refusal below names the file that was asked for.
        }
    }

    private static Failure Refusal(string path, string reason) => new(
        CommandLineFailures.OutputNotWritable, OutputTexts.Word("outputFile.cannotBeWritten", path, reason), OutputTexts.Get("outputFile.nameFileInFolderThat"));
}
