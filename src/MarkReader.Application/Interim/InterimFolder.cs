using MarkReader.Application.Measuring;
using MarkReader.Application.Storage;
using MarkReader.Imaging.Photos;
using MarkReader.Quantities;

namespace MarkReader.Application.Interim;

/// <summary>Measures the photos of a folder, to be kept or to be compared with what was kept.</summary>
public static class InterimFolder
{
    /// <summary>Most photos of a set.</summary>
    public const int MostPhotos = 500;

    /// <param name="keep">Whether the photos are to be kept: what is no photo is then refused, while a photo that is kept and has been damaged since is told as another one.</param>
    /// <param name="progress">Told after each photo how many are done and how many there are.</param>
    public static Outcome<InterimRecord> Measure(string folder, bool keep, Action<int, int>? progress = null)
    {
        string[] files;
        try
        {
            files = [.. Directory.EnumerateFiles(folder).Where(PhotoNames.IsPhoto).Order(StringComparer.Ordinal).Take(MostPhotos + 1)];
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException)
        {
            return new Failure(InterimFailures.FolderInvalid, InterimTexts.Word("folder.unreadable", folder), InterimTexts.Get("folder.hint"));
        }

        if (files.Length is 0 or > MostPhotos)
            return new Failure(InterimFailures.FolderInvalid, InterimTexts.Word("folder.count", folder, MostPhotos), InterimTexts.Get("folder.hint"));
        Outcome<InterimPhoto>[] photos = PhotoRun.Each(files.Length, i => Photo(files[i], keep), progress);
        List<InterimPhoto> measured = [];
        foreach (Outcome<InterimPhoto> photo in photos)
        {
            if (!photo.TryGet(out InterimPhoto? one, out Failure? failure))
                return failure;
            measured.Add(one);
        }

        return new InterimRecord(ProgramVersion.Current, DateTimeOffset.UtcNow, measured);
    }

    private static Outcome<InterimPhoto> Photo(string file, bool keep)
    {
        byte[] bytes;
        try
        {
            bytes = File.ReadAllBytes(file);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return new Failure(InterimFailures.FolderInvalid, InterimTexts.Word("photo.unreadable", Path.GetFileName(file)), InterimTexts.Get("photo.unreadable.hint"));
        }

        if (keep && !PhotoHeaderReader.Read(bytes).TryGet(out _, out Failure? failure))
            return new Failure(InterimFailures.FolderInvalid, InterimTexts.Word("folder.noPhoto", Path.GetFileName(file), failure.What), InterimTexts.Get("folder.noPhoto.hint"));
        return InterimReader.Read(Path.GetFileName(file), bytes);
    }
}
