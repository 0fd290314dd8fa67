using System.Globalization;
using MarkReader.Imaging.Pipeline;
using MarkReader.Quantities;

namespace MarkReader.Application.Studies;

/// <summary>Reads a study from photos: FOLDER/operator/photo, all of the same target with several marks.</summary>
public static class StudyFolder
{
    private const string Layout = "make a folder for each person or phone and put their photos of the same target into it";
    private const int LongestName = 60;

    private static readonly string[] s_endings = [".jpg", ".jpeg", ".png", ".webp"];

    /// <summary>The readings; every mark that all photos show is a part.</summary>
    /// <param name="progress">Told after each photo how many are done and how many there are.</param>
    public static Outcome<StudyReadings> Read(string folder, MeasureOptions? options = null, Action<int, int>? progress = null)
    {
        if (!Find(folder).TryGet(out IReadOnlyList<Photo>? photos, out Failure? failure))
            return failure;
        if (!PhotoSeries.Measure([.. photos.Select(p => p.Path)], [.. photos.Select(p => p.Name)], options, progress).TryGet(out IReadOnlyList<PhotoMeasurement>? measured, out failure))
            return failure;
        if (!SharedMarks.Of([.. measured.Select(m => m.Marks)]).TryGet(out SharedMarks? marks, out failure))
            return failure;
        StudyReading[] readings =
        [
            .. from i in Enumerable.Range(0, photos.Count)
               from m in Enumerable.Range(0, marks.All.Count)
               let centre = marks.All[m][i].Centre
               select new StudyReading(string.Create(CultureInfo.InvariantCulture, $"{m + 1}"), photos[i].Operator, photos[i].Name, centre.Point, centre.Covariance),
        ];
        string[] notes = marks.LeftOut.Count == 0 ? [] : [$"Left out, since some photo does not show it: {string.Join(" and ", marks.LeftOut.Take(4).Select(Place))}{(marks.LeftOut.Count > 4 ? " and more" : "")}."];
        return new StudyReadings(readings, Photos: true, notes);
    }

    private static Outcome<IReadOnlyList<Photo>> Find(string folder)
    {
        if (!Directory.Exists(folder))
            return new Failure(StudyInputFailures.FolderInvalid, $"there is no folder '{folder}'", Layout);
        List<Photo> photos = [];
        try
        {
            foreach (string of in Directory.EnumerateDirectories(folder).Order(StringComparer.Ordinal))
            {
                string who = Shown(Path.GetFileName(of));
                photos.AddRange(Directory.EnumerateFiles(of).Where(f => s_endings.Contains(Path.GetExtension(f).ToLowerInvariant())).Order(StringComparer.Ordinal)
                    .Take(PhotoSeries.Most + 1).Select(f => new Photo(who, $"{who}/{Shown(Path.GetFileName(f))}", f)));
            }
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return new Failure(StudyInputFailures.FolderInvalid, $"the folder '{folder}' cannot be read", "check its permissions");
        }

        if (photos.Count > PhotoSeries.Most)
            return new Failure(StudyInputFailures.FolderInvalid, $"the folder '{folder}' has more than {PhotoSeries.Most} photos", "take fewer");
        IGrouping<string, Photo>[] people = [.. photos.GroupBy(p => p.Operator)];
        if (people.Length < 2)
            return new Failure(StudyInputFailures.FolderInvalid, $"the folder '{folder}' has {(people.Length == 0 ? "no folder with photos" : $"photos of '{people[0].Key}' only")}", $"{Layout}, two at least");
        // Before the long work of measuring.
        if (people.FirstOrDefault(p => p.Count() != people[0].Count()) is { } odd)
            return new Failure(Metrology.Studies.StudyFailures.Unbalanced, $"'{people[0].Key}' has {people[0].Count()} photos and '{odd.Key}' {odd.Count()}", "give everyone equally many photos");
        return people[0].Count() >= 2 ? photos : new Failure(Metrology.Studies.StudyFailures.TooSmall, "everyone has one photo only", "let everyone take at least two photos, better three");
    }

    private static string Place(CardPoint p) => string.Create(CultureInfo.InvariantCulture, $"the mark at u {p.U:0.0}, v {p.V:0.0} mm");

    // File names may hold anything.
    private static string Shown(string name) => string.Concat(name.Select(c => char.IsControl(c) ? '?' : c).Take(LongestName));

    private sealed record Photo(string Operator, string Name, string Path);
}
