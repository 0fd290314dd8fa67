using System.Globalization;
using MarkReader.Alignment.Verdicts;
using MarkReader.Alignment.Visits;
using MarkReader.Application.Advising;
using MarkReader.Drawing.Documents;

namespace MarkReader.Application.Records;

/// <summary>A record as a document for people; PDF and HTML are both written from it.</summary>
public static class RecordDocument
{
    public static SheetDocument Of(VisitRecord record, RecordFormat format)
    {
        RecordTables tables = new(record, format);
        List<DocumentBlock> blocks =
        [
            Banner(record, format),
            new DocumentBlock.Facts(Facts(record, format)),
            Heading("ResultHeading"),
            tables.Result(),
            Note("ResultNote"),
            .. tables.Legs() is { } legs ? (DocumentBlock[])[legs, Note("LegsNote")] : [],
            Heading("EventsHeading"),
            tables.Events(),
            new DocumentBlock.Paragraph(tables.EventsNote(), Small: true),
            .. RecordPictures.Of(record, format),
            Heading("MarksHeading"),
            tables.Marks(),
            Note("MarksNote"),
            Heading("BudgetHeading"),
            .. new RecordBudgetTables(record, format).Blocks(),
            Heading("MachineHeading"),
            new DocumentBlock.Facts(MachineFacts.Of(record.Setup, format)),
            .. Photos(record, format),
            Heading("LimitsHeading"),
            new DocumentBlock.Sentences([.. Enumerable.Range(1, 4).Select(i => RecordTexts.Get(string.Create(CultureInfo.InvariantCulture, $"Limit{i}")))]),
            Heading("SignatureHeading"),
            Signature(record),
        ];
        string machine = Name(record);
        string day = format.Day(record.EndedAt ?? record.MadeAt);
        string subtitle = record.Source.Number is { } number
            ? RecordTexts.Say("SubtitleVisit", machine, number.ToString(CultureInfo.InvariantCulture), day)
            : RecordTexts.Say("SubtitleDay", machine, day);
        return new(RecordTexts.Get("Title"), subtitle, blocks)
        {
            Author = record.Source.DoneBy,
            Subject = RecordTexts.Get("Subject"),
            Foot = RecordTexts.Say("Foot", record.ProgramVersion),
            PageNumber = RecordTexts.Get("PageNumber"),
            Written = record.MadeAt,
        };
    }

    private static string Name(VisitRecord record) => record.MachineName.Length > 0 ? record.MachineName : RecordTexts.Get("MachineUnnamed");

    private static DocumentBlock.Heading Heading(string name) => new(RecordTexts.Get(name));

    private static DocumentBlock.Paragraph Note(string name) => new(RecordTexts.Get(name), Small: true);

    private static DocumentBlock.Banner Banner(VisitRecord record, RecordFormat format)
    {
        Verdict verdict = record.Verdict.Verdict;
        DocumentTone tone = verdict switch
        {
            Verdict.Within => DocumentTone.Good,
            Verdict.Outside => DocumentTone.Bad,
            _ => DocumentTone.Open,
        };
        // Actions are in mm and with a point, as advise prints them.
        string[] next = record.Advice.Action switch
        {
            VisitAction.Done => [],
            VisitAction.Stop => [RecordTexts.Get("Stopped")],
            _ when format is { Unit: RecordUnit.Millimetre, HasComma: false } => [RecordTexts.Say("NextStep", ActionWords.Of(record.Advice.Action))],
            _ => [RecordTexts.Get("NotFinished")],
        };
        string[] practice = record.Source.IsPractice ? [RecordTexts.Get("Practice")] : [];
        return new(tone, RecordTexts.Get(verdict + "Word"), [.. practice, RecordTexts.Get(verdict + "Claim"), .. next, RecordTexts.Get("ClaimLimits")]);
    }

    private static List<DocumentFact> Facts(VisitRecord record, RecordFormat format)
    {
        RecordSource source = record.Source;
        string Time(DateTimeOffset time) => RecordTexts.Say("TimeAt", format.Time(time), format.Offset(time));
        int taken = record.Marks.Count(m => m.Of.IsTakenBack);
        string pulses = record.Marks.Count.ToString(CultureInfo.InvariantCulture);
        List<DocumentFact> facts = [new(RecordTexts.Get("FactMachine"), Name(record))];
        if (source.Number is { } number)
            facts.Add(new(RecordTexts.Get("FactVisit"), number.ToString(CultureInfo.InvariantCulture)));
        facts.Add(new(RecordTexts.Get("FactBy"), source.DoneBy.Length > 0 ? source.DoneBy : RecordTexts.Get("Unknown")));
        if (source.BegunAt is { } begun)
            facts.Add(new(RecordTexts.Get("FactBegun"), Time(begun)));
        if (record.EndedAt is { } ended)
            facts.Add(new(RecordTexts.Get("FactEnded"), Time(ended)));
        facts.Add(new(RecordTexts.Get("FactMarks"), taken == 0 ? pulses : RecordTexts.Say("PulseCountTakenBack", pulses, taken.ToString(CultureInfo.InvariantCulture))));
        if (source.Note.Length > 0)
            facts.Add(new(RecordTexts.Get("FactNote"), source.Note));
        facts.Add(new(RecordTexts.Get("FactMade"), Time(record.MadeAt)));
        facts.Add(new(RecordTexts.Get("FactProgram"), RecordTexts.Say("Program", record.ProgramVersion)));
        return facts;
    }

    private static IEnumerable<DocumentBlock> Photos(VisitRecord record, RecordFormat format)
    {
        if (record.Photos.Count == 0 && record.PhotosMissing == 0)
            yield break;
        yield return Heading("PhotosHeading");
        yield return new DocumentBlock.Photos([.. record.Photos.Select(photo =>
        {
            string number = photo.Number.ToString(CultureInfo.InvariantCulture);
            string what = string.Join("; ", record.Marks.Where(m => m.Photo == photo.Number)
                .Select(m => RecordTexts.Say("PhotoMark", m.Number.ToString(CultureInfo.InvariantCulture), EventWords.Place(m.Of.Event, format))));
            return new DocumentPhoto(
                photo.Jpeg, photo.Size.Width, photo.Size.Height, RecordTexts.Say(photo.IsCut ? "PhotoCut" : "PhotoWhole", number, what), RecordTexts.Say("PhotoDescription", number, what));
        })]);
        yield return Note("PhotosNote");
        if (record.PhotosMissing > 0)
            yield return new DocumentBlock.Paragraph(RecordTexts.Say("PhotosMissing", record.PhotosMissing.ToString(CultureInfo.InvariantCulture)), Small: true);
    }

    private static DocumentBlock.Signature Signature(VisitRecord record) => new(
        RecordTexts.Get("SignatureSentence"),
        [
            new(RecordTexts.Get("SignatureName"), record.Source.DoneBy),
            new(RecordTexts.Get("SignatureDate"), ""),
            new(RecordTexts.Get("Signature"), ""),
        ]);
}
