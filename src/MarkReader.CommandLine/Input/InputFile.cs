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
            return new Failure(CommandLineFailures.FileIsFolder, $"'{path}' is a folder", $"name {what}");
        try
        {
            using FileStream stream = File.OpenRead(path);
            if (stream.Length > most)
                return new Failure(CommandLineFailures.FileTooLarge, $"'{path}' has {Size(stream.Length)}, the limit is {Size(most)}", whenTooLarge);
            byte[] bytes = new byte[stream.Length];
            stream.ReadExactly(bytes);
            return new InputFile(bytes);
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException or ArgumentException)
        {
            return new Failure(CommandLineFailures.FileMissing, $"there is no file '{path}'", "check the path");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or NotSupportedException)
        {
            return new Failure(CommandLineFailures.FileUnreadable, $"'{path}' cannot be read", "check its permissions");
        }
    }

    private static string Size(long bytes) => bytes >= 1048576 ? $"{bytes / 1048576} MB" : $"{(bytes + 1023) / 1024} kB";
}
