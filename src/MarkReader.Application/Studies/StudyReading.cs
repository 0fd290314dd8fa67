using System.Globalization;
using MarkReader.Quantities;

namespace MarkReader.Application.Studies;

/// <summary>Where one mark was read once.</summary>
/// <param name="Part">Which mark.</param>
/// <param name="Operator">Person or phone.</param>
/// <param name="Repeat">Which time; the photo.</param>
/// <param name="At">In the card frame.</param>
/// <param name="Stated">The uncertainty that was stated for it; null when none was.</param>
public sealed record StudyReading(string Part, string Operator, string Repeat, CardPoint At, Covariance2? Stated);

/// <summary>The readings of a study and where they come from.</summary>
/// <param name="Photos">Whether a repeat is one photo of all marks.</param>
/// <param name="Notes">What was left out of it, in sentences.</param>
public sealed record StudyReadings(IReadOnlyList<StudyReading> All, bool Photos, IReadOnlyList<Wording> Notes)
{
    private const int MostPlaces = 4;

    /// <summary>Readings of every mark that all photos of one target show; such a mark is a part.</summary>
    public static Outcome<StudyReadings> Of(IReadOnlyList<StudyPhoto> photos)
    {
        if (!SharedMarks.Of([.. photos.Select(p => p.Marks.Select(m => m.At).ToArray())]).TryGet(out SharedMarks? marks, out Failure? failure))
            return failure;
        StudyReading[] readings =
        [
            .. from i in Enumerable.Range(0, photos.Count)
               from m in Enumerable.Range(0, marks.All.Count)
               let at = marks.All[m][i]
               select new StudyReading(string.Create(CultureInfo.InvariantCulture, $"{m + 1}"), photos[i].Person, photos[i].Name, at.Point, at.Covariance),
        ];
        return new StudyReadings(readings, Photos: true, marks.LeftOut.Count == 0 ? [] : [LeftOut(marks.LeftOut)]);
    }

    private static Wording LeftOut(IReadOnlyList<CardPoint> places)
    {
        Wording all = Place(places[0]);
        foreach (CardPoint place in places.Take(MostPlaces).Skip(1))
            all = StudyTexts.Word("studyFolder.and", all, Place(place));
        return StudyTexts.Word("studyFolder.leftOutSinceSomePhoto", all, places.Count > MostPlaces ? StudyTexts.Get("studyFolder.andMore") : "");
    }

    private static Wording Place(CardPoint p) => StudyTexts.Word("studyFolder.markAtUVMm", new SaidLength(p.U, "0.0", HasUnit: false), new SaidLength(p.V, "0.0"));
}
