using System.Globalization;
using MarkReader.Application.Records;
using MarkReader.Application.Storage;
using MarkReader.Drawing.Documents;
using MarkReader.Metrology.Studies;

namespace MarkReader.Application.Studies;

/// <summary>A study as a document of one or two pages.</summary>
public static class StudyDocument
{
    /// <param name="name">What the study is called; null for none.</param>
    public static SheetDocument Of(StudyAnswer answer, DateTimeOffset written, RecordFormat? format = null, string? name = null)
    {
        StudyNumbers n = new(format);
        DocumentTone tone = StudyWords.Verdict(answer) switch { StudyVerdict.Fits => DocumentTone.Good, StudyVerdict.TooCoarse => DocumentTone.Bad, _ => DocumentTone.Open };
        List<DocumentBlock> blocks =
        [
            new DocumentBlock.Banner(tone, StudyWords.Word(answer), [StudyWords.Claim(answer), StudyWords.Result(answer, format)]),
            new DocumentBlock.Sentences([.. answer.Axes.Select(a => StudyWords.Stated(a, format)).Append(StudyWords.Suspect(answer)).OfType<string>(), StudyWords.Plan(answer.Plan)]),
            new DocumentBlock.Pictures([.. StudyPictures.Of(answer, format).Select(p => new DocumentPicture(p.Caption, p.Drawing))]),
            new DocumentBlock.Heading(StudyTexts.Get("studyDocument.partsScatter")),
            Components(answer, n),
            new DocumentBlock.Paragraph(StudyTexts.Get("studyDocument.standardDeviationsWithIntervalsModified"), Small: true),
            new DocumentBlock.Heading(StudyTexts.Get("studyDocument.analysisVariance")),
            .. answer.Axes.Select(a => Anova(a, n)),
            new DocumentBlock.Sentences([.. StudyWords.Notes(answer, format), .. answer.Axes.Where(a => a.Study.Categories is not null).Select(a => StudyTexts.Say("studyDocument.gaugeVarianceAllReadingsAnd", a.Axis, n.Number(a.Study.Contribution(StudyPart.Gauge), 2), n.Number(a.Study.StudyVariation(StudyPart.Gauge), 2), a.Study.Categories))]),
        ];
        return new(name ?? StudyTexts.Get("studyDocument.repeatabilityAndReproducibilityMarks"), StudyWords.Extent(answer), blocks)
        {
            Subject = StudyTexts.Get("studyDocument.gaugeStudy"),
            Foot = $"MarkReader {ProgramVersion.Current}",
            Written = written,
        };
    }

    private static DocumentBlock.Table Components(StudyAnswer answer, StudyNumbers n)
    {
        bool photos = answer.Request.Readings.Photos;
        return new(
            "",
            [new(StudyTexts.Get("studyDocument.part"), Wraps: true), .. answer.Axes.SelectMany(a => (TableColumn[])[Number(StudyTexts.Say("studyDocument.along", a.Axis), n.Unit), Number("95 %", n.Unit), Number(StudyTexts.Get("studyDocument.gauge"), "%"), Number(StudyTexts.Get("studyDocument.tolerance"), "%")])],
            [
                .. StudyWords.Order(photos).Where(part => part != StudyPart.Parts)
                    .Select(part => new TableRow([StudyWords.Name(part, photos), .. answer.Axes.SelectMany(a => Cells(a.Study, part, StudyWords.FullWidth(answer), n))])),
            ]);
    }

    private static string[] Cells(GaugeStudy study, StudyPart part, double width, StudyNumbers n)
    {
        VarianceComponent c = study[part];
        return
        [
            n.Cell(c.StandardDeviation), StudyTexts.Say("studyDocument.to", n.Cell(c.DeviationInterval.Low), n.Cell(c.DeviationInterval.High)),
            StudyWords.Share(study, part) is { } share ? n.Percent(share) : "–", n.Percent(study.OfTolerance(part, width).Percent),
        ];
    }

    private static DocumentBlock.Table Anova(StudyAxis axis, StudyNumbers n) => new(
        StudyTexts.Say("studyDocument.along2", axis.Axis),
        [new(StudyTexts.Get("studyDocument.source"), Wraps: true), Number(StudyTexts.Get("studyDocument.sumSquares"), "mm²"), Number(StudyTexts.Get("studyDocument.dof")), Number(StudyTexts.Get("studyDocument.meanSquare"), "mm²"), Number("F"), Number("p"), new(StudyTexts.Get("studyDocument.fAgainst"))],
        [
            .. axis.Study.Rows.Select(row => new TableRow(
            [
                StudyWords.Name(row.Source), n.Signs(Significant(row.SumOfSquares)), Text(row.Dof, "0"), n.Signs(Significant(row.MeanSquare)),
                row.Test is { } f ? n.Signs(Text(f.F, f.F < 1000 ? "0.000" : "0")) : "–", row.Test is { } p ? n.P(p.Probability) : "–", string.Join(" + ", (row.Test?.Against ?? []).Select(StudyWords.Name)),
            ])),
        ]);

    private static TableColumn Number(string heading, string unit = "") => new(heading, unit, IsNumber: true);

    // Marks lie millimetres apart and readings micrometres: no fixed count of decimals suits both.
    private static string Significant(double value) => value == 0 ? "0" : Text(value, value >= 1 ? "0.0000" : value >= 0.001 ? "0.000000" : "0.000E0");

    private static string Text(double value, string format) => value.ToString(format, CultureInfo.InvariantCulture);
}
