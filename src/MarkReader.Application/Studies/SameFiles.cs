using MarkReader.Application.Storage;

namespace MarkReader.Application.Studies;

/// <summary>Finds files with the same bytes: a photo counts once in a study.</summary>
internal static class SameFiles
{
    /// <summary>The first file, from 0, that is the same as an earlier one, with that one; null when there is none. What cannot be read is left to those who read it.</summary>
    public static (int First, int Second)? First(IReadOnlyList<string> paths)
    {
        // Only files of equal length can be the same, and few are.
        long?[] lengths = [.. paths.Select(Length)];
        HashSet<long> shared = [.. lengths.OfType<long>().GroupBy(l => l).Where(g => g.Skip(1).Any()).Select(g => g.Key)];
        Dictionary<string, int> seen = [];
        for (int i = 0; i < paths.Count; i++)
        {
            if (lengths[i] is not { } length || !shared.Contains(length) || Digest(paths[i]) is not { } digest)
                continue;
            if (!seen.TryAdd(digest, i))
                return (seen[digest], i);
        }

        return null;
    }

    private static long? Length(string path) => Try<long?>(() => new FileInfo(path) is { Exists: true } file ? file.Length : null);

    private static string? Digest(string path) => Try(() =>
    {
        using FileStream stream = File.OpenRead(path);
        return PhotoFiles.Digest(stream);
    });

    private static T? Try<T>(Func<T?> read)
    {
        try
        {
            return read();
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or NotSupportedException or ArgumentException)
        {
            return default;
        }
    }
}
