using MarkReader.Application.Measuring;
using MarkReader.Imaging.Pipeline;
using MarkReader.Quantities;

namespace MarkReader.Application.Studies;

/// <summary>Reads a study from photos: FOLDER/operator/photo, all of the same target with several marks.</summary>
public static class StudyFolder
{
    private const int LongestName = 60;

    private static string Layout => StudyTexts.Get("studyFolder.makeFolderForEachPerson");

    /// <summary>The readings; every mark that all photos show is a part.</summary>
    /// <param name="progress">Told after each photo how many are done and how many there are.</param>
    public static Outcome<StudyReadings> Read(string folder, MeasureOptions? options = null, Action<int, int>? progress = null)
    {
        if (!Find(folder).TryGet(out IReadOnlyList<Photo>? photos, out Failure? failure))
            return failure;
        if (!PhotoSeries.Measure([.. photos.Select(p => p.Path)], [.. photos.Select(p => p.Name)], options, progress).TryGet(out IReadOnlyList<PhotoMeasurement>? measured, out failure))
            return failure;
        return StudyReadings.Of([.. measured.Select((m, i) => new StudyPhoto(photos[i].Operator, photos[i].Name, $"'{photos[i].Name}'", [.. m.Marks.Select(StudyMark.Of)]))]);
    }

    private static Outcome<IReadOnlyList<Photo>> Find(string folder)
    {
        if (!Directory.Exists(folder))
            return new Failure(StudyInputFailures.FolderInvalid, StudyTexts.Word("studyFolder.thereNoFolder", folder), Layout);
        List<Photo> photos = [];
        try
        {
            foreach (string of in Directory.EnumerateDirectories(folder).Order(StringComparer.Ordinal))
            {
                string who = Shown(Path.GetFileName(of));
                photos.AddRange(Directory.EnumerateFiles(of).Where(PhotoNames.IsPhoto).Order(StringComparer.Ordinal)
                    .Take(PhotoSeries.Most + 1).Select(f => new Photo(who, $"{who}/{Shown(Path.GetFileName(f))}", f)));
            }
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return new Failure(StudyInputFailures.FolderInvalid, StudyTexts.Word("studyFolder.folderCannotBeRead", folder), StudyTexts.Get("studyFolder.checkPermissions"));
        }

        if (photos.Count > PhotoSeries.Most)
            return new Failure(StudyInputFailures.FolderInvalid, StudyTexts.Word("studyFolder.folderHasMoreThanPhotos", folder, PhotoSeries.Most), StudyTexts.Get("studyFolder.takeFewer"));
        IGrouping<string, Photo>[] people = [.. photos.GroupBy(p => p.Operator)];
        if (people.Length < 2)
            return new Failure(StudyInputFailures.FolderInvalid, StudyTexts.Word("studyFolder.folderHas", folder, people.Length == 0 ? StudyTexts.Get("studyFolder.noFolderWithPhotos") : StudyTexts.Say("studyFolder.photosOnly", people[0].Key)), StudyTexts.Word("studyFolder.twoAtLeast", Layout));
        // Before the long work of measuring.
        if (people.FirstOrDefault(p => p.Count() != people[0].Count()) is { } odd)
            return new Failure(Metrology.Studies.StudyFailures.Unbalanced, StudyTexts.Word("studyFolder.hasPhotosAnd", people[0].Key, people[0].Count(), odd.Key, odd.Count()), StudyTexts.Get("studyFolder.giveEveryoneEquallyManyPhotos"));
        return people[0].Count() >= 2 ? photos : new Failure(Metrology.Studies.StudyFailures.TooSmall, StudyTexts.Get("studyFolder.everyoneHasOnePhotoOnly"), StudyTexts.Get("studyFolder.letEveryoneTakeAtLeast"));
    }

    // File names may hold anything.
    private static string Shown(string name) => string.Concat(name.Select(c => char.IsControl(c) ? '?' : c).Take(LongestName));

    private sealed record Photo(string Operator, string Name, string Path);
}
