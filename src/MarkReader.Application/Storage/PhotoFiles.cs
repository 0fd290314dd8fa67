using System.Security.Cryptography;

namespace MarkReader.Application.Storage;

/// <summary>The original photos as files named by their content: photos/3f/3f9a….jpg.</summary>
/// <remarks>
/// Files and not rows of the database: any viewer opens them, a damaged database takes no photo with it, and the database
/// stays small enough to copy. A file is written under another name, flushed to the disk and renamed, so that a name either
/// holds all bytes of its photo or is not there.
/// </remarks>
internal sealed class PhotoFiles(string root)
{
    private const string Unfinished = ".part";

    public static string Digest(ReadOnlySpan<byte> bytes) => Convert.ToHexStringLower(SHA256.HashData(bytes));

    public static string Digest(Stream bytes) => Convert.ToHexStringLower(SHA256.HashData(bytes));

    public string PathOf(string digest, OriginalFormat format) => Path.Combine(root, digest[..2], digest + format.Extension);

    /// <summary>Writes the bytes unless they are there already.</summary>
    public void Write(string digest, OriginalFormat format, ReadOnlySpan<byte> bytes)
    {
        string path = PathOf(digest, format);
        if (new FileInfo(path) is { Exists: true } there && there.Length == bytes.Length)
            return;
        string folder = Path.GetDirectoryName(path)!;
        Directory.CreateDirectory(folder);
        string unfinished = Path.Combine(folder, $"{digest}.{Guid.NewGuid():N}{Unfinished}");
        try
        {
            using (FileStream file = new(unfinished, FileMode.CreateNew, FileAccess.Write, FileShare.None))
            {
                file.Write(bytes);
                file.Flush(flushToDisk: true);
            }
            File.Move(unfinished, path, overwrite: true);
        }
        finally
        {
            File.Delete(unfinished);
        }
        FolderFlush.ToDisk(folder);
        FolderFlush.ToDisk(root);
    }

    /// <summary>The bytes, or null when the file is gone or holds other bytes than its name says.</summary>
    public byte[]? Read(string digest, OriginalFormat format)
    {
        string path = PathOf(digest, format);
        if (!File.Exists(path))
            return null;
        byte[] bytes = File.ReadAllBytes(path);
        return Digest(bytes) == digest ? bytes : null;
    }

    public void Delete(string digest, OriginalFormat format) => File.Delete(PathOf(digest, format));

    /// <summary>Removes what an earlier run left half written more than an hour ago; whole photos are never removed here.</summary>
    public void Tidy(DateTimeOffset now)
    {
        foreach (string path in Directory.EnumerateFiles(root, "*" + Unfinished, SearchOption.AllDirectories))
        {
            if (File.GetLastWriteTimeUtc(path) < now.UtcDateTime.AddHours(-1))
                File.Delete(path);
        }
    }
}
