using MarkReader.CommandLine.Commands;
using MarkReader.Quantities;

namespace MarkReader.CommandLine.Input;

/// <summary>The bytes of a file that the call names.</summary>
internal sealed record InputFile(ReadOnlyMemory<byte> Bytes)
{
    /// <param name="most">Largest size, bytes.</param>
    /// <param name="what">What the file is to hold, as in "name a photo file".</param>
    /// <param name="whenTooLarge">What to do about a larger one.</param>
    public static Outcome<InputFile> Read(string path, long most, string what, string whenTooLarge)
    {
        if (Directory.Exists(path))
            return new Failure(CommandLineFailures.FileIsFolder, CommandTexts.Word("inputFile.folder", path), CommandTexts.Word("inputFile.name", what));
        try
        {
            using FileStream stream = File.OpenRead(path);
            if (stream.Length > most)
                return new Failure(CommandLineFailures.FileTooLarge, CommandTexts.Word("inputFile.hasLimit", path, Size(stream.Length), Size(most)), whenTooLarge);
            byte[] bytes = new byte[stream.Length];
            stream.ReadExactly(bytes);
            return new InputFile(bytes);
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException or ArgumentException)
        {
            return new Failure(CommandLineFailures.FileMissing, CommandTexts.Word("inputFile.thereNoFile", path), CommandTexts.Get("inputFile.checkPath"));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or NotSupportedException)
        {
            return new Failure(CommandLineFailures.FileUnreadable, CommandTexts.Word("inputFile.cannotBeRead", path), CommandTexts.Get("common.checkPermissions"));
        }
    }

    private static string Size(long bytes) => bytes >= 1048576 ? $"{bytes / 1048576} MB" : $"{(bytes + 1023) / 1024} kB";
}
