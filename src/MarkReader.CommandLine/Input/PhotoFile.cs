using MarkReader.Application.Cameras;
using MarkReader.CommandLine.Commands;
using MarkReader.Imaging.Photos;
using MarkReader.Quantities;

namespace MarkReader.CommandLine.Input;

/// <summary>The bytes of a photo file.</summary>
internal sealed record PhotoFile(ReadOnlyMemory<byte> Bytes)
{
    /// <summary>Reads the file unless it is larger than a photo may be.</summary>
    public static Outcome<PhotoFile> Read(string path) =>
        InputFile.Read(path, PhotoLimits.MaxBytes, CommandTexts.Get("photoFile.photoFile"), CommandTexts.Get("photoFile.makePhotoSmaller")).TryGet(out InputFile? file, out Failure? failure) ? new PhotoFile(file.Bytes) : failure;

    /// <summary>One photo after the other; the first that cannot be read ends them.</summary>
    public static IEnumerable<BoardPhotoFile> OneByOne(string[] paths, Action<Failure> unread)
    {
        foreach ((string path, string name) in paths.Zip(NamesOf(paths)))
        {
            if (!Read(path).TryGet(out PhotoFile? photo, out Failure? failure))
            {
                unread(failure);
                yield break;
            }

            yield return new(name, photo.Bytes);
        }
    }

    /// <summary>How messages call the files: by their names, with their folder where these are equal, and as they were given where that is not enough.</summary>
    public static IReadOnlyList<string> NamesOf(IReadOnlyList<string> paths)
    {
        string[] names = [.. paths.Select(p => Path.GetFileName(p)!)], longer = [.. paths.Select(WithFolder)];
        return [.. paths.Select((p, i) => names.Count(n => n == names[i]) == 1 ? names[i] : longer.Count(n => n == longer[i]) == 1 ? longer[i] : p)];
    }

    private static string WithFolder(string path) => Path.Combine(Path.GetFileName(Path.GetDirectoryName(Path.GetFullPath(path))) ?? "", Path.GetFileName(path));
}
