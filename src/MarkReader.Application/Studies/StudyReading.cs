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
        if (!SharedMarks.Of(photos).TryGet(out SharedMarks? marks, out Failure? failure))
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

    private static Wording LeftOut(IReadOnlyList<LeftOutMark> marks)
    {
        Wording all = Place(marks[0]);
        foreach (LeftOutMark mark in marks.Take(MostPlaces).Skip(1))
            all = StudyTexts.Word("studyFolder.and", all, Place(mark));
        return StudyTexts.Word("studyFolder.leftOutSinceSomePhoto", all, marks.Count > MostPlaces ? StudyTexts.Say("sharedMarks.more", marks.Count - MostPlaces) : "");
    }

    // The fewer photos tell which to look at.
    private static Wording Place(LeftOutMark mark)
    {
        Wording at = StudyTexts.Word("studyFolder.markAtUVMm", new SaidLength(mark.At.U, "0.0", HasUnit: false), new SaidLength(mark.At.V, "0.0"));
        return mark.Missing.Count <= mark.Seen.Count ? StudyTexts.Word("studyFolder.missingIn", at, SharedMarks.Named(mark.Missing)) : StudyTexts.Word("studyFolder.onlyIn", at, SharedMarks.Named(mark.Seen));
    }
}
