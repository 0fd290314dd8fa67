using MarkReader.Application.Cameras;
using MarkReader.Application.Storage;
using MarkReader.Imaging.Photos;
using MarkReader.Quantities;

namespace MarkReader.Application.Interim;

/// <summary>Takes sets of reference photos in, keeps the photos with what is measured in them, and measures them again.</summary>
public sealed class InterimDesk(InterimStore sets, PhotoStore photos, TimeProvider clock)
{
    /// <summary>Most photos of a set.</summary>
    public const int MostPhotos = 24;

    /// <summary>Longest name of a set.</summary>
    public const int LongestName = 80;

    /// <summary>Keeps photos and what this version measures in them. The same bytes count once; of a set that is refused nothing stays.</summary>
    /// <param name="count">How many photos there are.</param>
    /// <param name="files">Read when they are needed, so that one is in memory at a time.</param>
    /// <param name="request">The request's key; one that is repeated gives the set that it kept. Null: every call keeps one.</param>
    /// <param name="progress">Told after each photo how many are done and how many there are.</param>
    public Outcome<KeptInterimSet> Keep(string name, int count, IEnumerable<BoardPhotoFile> files, RequestKey? request, Action<int, int>? progress = null)
    {
        if (name.Length is 0 or > LongestName || name.Any(char.IsControl))
            return new Failure(InterimFailures.NameInvalid, InterimTexts.Word("set.name", LongestName), InterimTexts.Get("set.nameHint"));
        if (count > MostPhotos)
            return new Failure(InterimFailures.TooManyPhotos, InterimTexts.Word("set.manyPhotos", count, MostPhotos), InterimTexts.Get("set.manyPhotosHint"));
        if (!sets.Earlier(request).TryGet(out EarlierKept<KeptInterimSet>? earlier, out Failure? failure))
            return failure;
        if (earlier.Kept is { } there)
            return there;
        List<string> added = [];
        Outcome<KeptInterimSet> kept = Measure(count, files, added, progress).TryGet(out InterimRecord? record, out failure) ? sets.Add(name, record, request) : failure;
        if (!kept.TryGet(out _, out _))
            Drop(added);
        return kept;
    }

    /// <summary>Measures a set's photos with this version and keeps the result; a photo that is gone is left out.</summary>
    /// <param name="progress">Told after each photo how many are done and how many there are.</param>
    public Outcome<KeptInterimSet> MeasureAgain(long id, Action<int, int>? progress = null)
    {
        if (!sets.Find(id).TryGet(out KeptInterimSet? set, out Failure? failure))
            return failure;
        List<InterimPhoto> measured = [];
        int done = 0;
        foreach (InterimPhoto photo in set.Reference.Photos)
        {
            if (photos.Read(photo.Digest).TryGet(out Original? original, out failure))
                measured.Add(InterimReader.Read(photo.Name, original.Bytes));
            else if (failure.Code != StorageFailures.OriginalDamaged)
                return failure;
            progress?.Invoke(++done, set.Reference.Photos.Count);
        }

        return measured.Count > 0 ? sets.AddCheck(id, Now(measured)) : new Failure(StorageFailures.OriginalDamaged, InterimTexts.Get("set.gone"), InterimTexts.Get("set.goneHint"));
    }

    /// <summary>Keeps what this version measured in a set as a set of its own, for later versions to be compared with; the earlier one stays.</summary>
    /// <param name="request">The request's key; one that is repeated gives the set that it kept. Null: every call keeps one.</param>
    public Outcome<KeptInterimSet> KeepAnew(long id, RequestKey? request)
    {
        if (!sets.Earlier(request).TryGet(out EarlierKept<KeptInterimSet>? earlier, out Failure? failure))
            return failure;
        if (earlier.Kept is { } there)
            return there;
        if (!sets.Find(id).TryGet(out KeptInterimSet? set, out failure))
            return failure;
        return set.Checks.FirstOrDefault(c => c.Program == ProgramVersion.Current) is { } now
            ? sets.Add(set.Name, now, request)
            : new Failure(InterimFailures.NotMeasured, InterimTexts.Get("set.notMeasured"), InterimTexts.Get("set.notMeasuredHint"));
    }

    /// <summary>Removes a set, and those of its photos that nothing else needs.</summary>
    public Outcome<KeptInterimSet> Remove(long id)
    {
        Outcome<KeptInterimSet> removed = sets.Remove(id);
        if (removed.TryGet(out KeptInterimSet? set, out _))
            Drop(set.Reference.Photos.Select(p => p.Digest));
        return removed;
    }

    private Outcome<InterimRecord> Measure(int count, IEnumerable<BoardPhotoFile> files, List<string> added, Action<int, int>? progress)
    {
        List<InterimPhoto> measured = [];
        int done = 0;
        foreach (BoardPhotoFile file in files)
        {
            if (!PhotoHeaderReader.Read(file.Bytes).TryGet(out _, out Failure? failure) || !photos.Keep(file.Bytes).TryGet(out PhotoReceipt? receipt, out failure))
                return failure with { What = InterimTexts.Word("set.photo", file.Name, failure.What) };
            if (receipt.IsNew)
                added.Add(receipt.Photo.Id);
            if (measured.All(p => p.Digest != receipt.Photo.Id))
                measured.Add(InterimReader.Read(Free(file.Name.Length > 0 ? file.Name : "photo", measured), file.Bytes));
            progress?.Invoke(++done, count);
        }

        if (measured.Any(p => p.Marks.Count > 0))
            return Now(measured);
        return measured.Count == 0
            ? new Failure(InterimFailures.NoMarks, InterimTexts.Get("set.noPhotos"), InterimTexts.Get("set.noMarksHint"))
            : new Failure(InterimFailures.NoMarks, InterimTexts.Word("set.noMarks", measured[0].Name, measured[0].Why ?? InterimTexts.Get("set.noMark")), InterimTexts.Get("set.noMarksHint"));
    }

    private InterimRecord Now(IEnumerable<InterimPhoto> measured) => new(ProgramVersion.Current, clock.GetUtcNow(), [.. measured.OrderBy(p => p.Name, StringComparer.Ordinal)]);

    // A phone gives every photo the same name.
    private static string Free(string name, List<InterimPhoto> taken)
    {
        string free = name;
        for (int i = 2; taken.Any(p => p.Name == free); i++)
            free = FormattableString.Invariant($"{name} ({i})");
        return free;
    }

    // A photo to which something else refers stays.
    private void Drop(IEnumerable<string> ids)
    {
        foreach (string id in ids)
            _ = photos.Delete(id);
    }
}
