using MarkReader.Imaging.Photos;
using MarkReader.Quantities;

namespace MarkReader.CommandLine.Input;

/// <summary>The bytes of a photo file.</summary>
internal sealed record PhotoFile(ReadOnlyMemory<byte> Bytes)
{
    /// <summary>Reads the file unless it is larger than a photo may be.</summary>
    public static Outcome<PhotoFile> Read(string path)
    {
        if (Directory.Exists(path))
            return new Failure(CommandLineFailures.FileIsFolder, $"'{path}' is a folder", "name a photo file");
        try
        {
            using FileStream stream = File.OpenRead(path);
            if (stream.Length > PhotoLimits.MaxBytes)
                return new Failure(CommandLineFailures.FileTooLarge, $"'{path}' has {stream.Length / 1048576} MB, the limit is {PhotoLimits.MaxBytes / 1048576} MB", "make the photo smaller");
            byte[] bytes = new byte[stream.Length];
            stream.ReadExactly(bytes);
            return new PhotoFile(bytes);
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
}
