using System.Globalization;
using MarkReader.Alignment.Visits;
using MarkReader.Application.Pictures;
using MarkReader.Drawing.Documents;
using MarkReader.Drawing.Pictures;
using MarkReader.Quantities;

namespace MarkReader.Application.Records;

/// <summary>The pictures of a record: each subject as found beside the same as left.</summary>
internal static class RecordPictures
{
    private const string Before = "before-";

    // Named in a caption; all stand in the table of marks.
    private const int MostMarks = 4;

    private static readonly string[] s_subjects = ["target-1", "target-2", "bed", "frame", "aperture", "target-3"];

    public static IReadOnlyList<DocumentBlock> Of(VisitRecord record, RecordFormat format)
    {
        VisitEvent[] events = [.. record.Events.Where(e => !e.IsTakenBack).Select(e => e.Event)];
        VisitPictureStyle style = VisitPictureStyle.Default with { Style = PictureStyle.Default with { Numbers = Numbers(format) } };
        Dictionary<string, VisitPicture> pictures = VisitPictures.Of(record.Setup, events, record.Advice, style).Concat(VisitPictures.Before(record.Setup, events, style)).ToDictionary(p => p.Name);
        List<DocumentBlock> rows = [];
        foreach (string subject in s_subjects)
        {
            VisitPicture? before = pictures.GetValueOrDefault(Before + subject), left = pictures.GetValueOrDefault(subject);
            // What looks the same is shown once.
            if (before is not null && before.Description == left?.Description)
                before = null;
            DocumentPicture[] row = [.. new[] { before, left }.OfType<VisitPicture>().Select(p => Captioned(p, before is not null))];
            if (row.Length > 0)
                rows.Add(new DocumentBlock.Pictures(row));
        }

        return rows.Count == 0 ? [] : [new DocumentBlock.Heading(RecordTexts.Get("PicturesHeading")), .. rows, new DocumentBlock.Paragraph(RecordTexts.Get("PicturesNote"), Small: true)];
    }

    // What was not changed is as left and as found at once.
    private static DocumentPicture Captioned(VisitPicture picture, bool wasChanged)
    {
        string state = !wasChanged ? "PictureBoth" : picture.Name.StartsWith(Before, StringComparison.Ordinal) ? "PictureFound" : "PictureLeft";
        return new(RecordTexts.Say(state, picture.Brief(MostMarks, n => n == 1 ? RecordTexts.Get("MarkEarlier") : RecordTexts.Say("MarksEarlier", n.ToString(CultureInfo.InvariantCulture)))), picture.Drawing);
    }

    internal static PictureNumbers Numbers(RecordFormat format) => new(
        (Length l) => format.WithUnit(l.Millimetres, 2),
        (Length l) => format.WithUnit(l.Millimetres, 3),
        (Length l) => format.Short(l.Millimetres),
        n => format.HasComma ? n.ToString("0.##", CultureInfo.InvariantCulture).Replace('.', ',') : n.ToString("0.##", CultureInfo.InvariantCulture),
        format.Unit == RecordUnit.Inch);
}
