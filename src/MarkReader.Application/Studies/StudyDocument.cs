using System.Globalization;
using MarkReader.Application.Storage;
using MarkReader.Drawing.Documents;
using MarkReader.Drawing.Studies;
using MarkReader.Metrology.Studies;
using MarkReader.Quantities;

namespace MarkReader.Application.Studies;

/// <summary>A study as a document of one or two pages.</summary>
public static class StudyDocument
{
    public static SheetDocument Of(StudyAnswer answer, DateTimeOffset written)
    {
        bool photos = answer.Request.Readings.Photos;
        DocumentTone tone = StudyWords.Verdict(answer) switch { StudyVerdict.Fits => DocumentTone.Good, StudyVerdict.TooCoarse => DocumentTone.Bad, _ => DocumentTone.Open };
        List<DocumentBlock> blocks =
        [
            new DocumentBlock.Banner(tone, StudyWords.Word(answer), [StudyWords.Claim(answer), StudyWords.Result(answer)]),
            new DocumentBlock.Sentences([.. answer.Axes.Select(StudyWords.Stated).Append(StudyWords.Suspect(answer)).OfType<string>(), StudyWords.Plan(answer.Plan)]),
            new DocumentBlock.Pictures([.. answer.Axes.Select(a => Bars(a, photos)), Cloud(answer)]),
            new DocumentBlock.Heading(StudyTexts.Get("studyDocument.partsScatter")),
            Components(answer),
            new DocumentBlock.Paragraph(StudyTexts.Get("studyDocument.standardDeviationsWithIntervalsModified"), Small: true),
            new DocumentBlock.Heading(StudyTexts.Get("studyDocument.analysisVariance")),
            .. answer.Axes.Select(Anova),
            new DocumentBlock.Sentences([.. StudyWords.Notes(answer), .. answer.Axes.Where(a => a.Study.Categories is not null).Select(a => StudyTexts.Say("studyDocument.gaugeVarianceAllReadingsAnd", a.Axis, a.Study.Contribution(StudyPart.Gauge), a.Study.StudyVariation(StudyPart.Gauge), a.Study.Categories))]),
        ];
        return new(StudyTexts.Get("studyDocument.repeatabilityAndReproducibilityMarks"), StudyWords.Extent(answer), blocks)
        {
            Subject = StudyTexts.Get("studyDocument.gaugeStudy"),
            Foot = $"MarkReader {ProgramVersion.Current}",
            Written = written,
        };
    }

    private static DocumentPicture Bars(StudyAxis axis, bool photos)
    {
        ComponentBar Bar(StudyPart part)
        {
            VarianceComponent c = axis.Study[part];
            return new(StudyWords.Name(part, photos), Mm(c.StandardDeviation), Mm(c.DeviationInterval.Low), Mm(c.DeviationInterval.High), part is StudyPart.Gauge);
        }

        StudyPart[] parts = [.. StudyWords.Order(photos).Where(p => p is not (StudyPart.Parts or StudyPart.Reproducibility) && (!photos || p != StudyPart.Repeatability))];
        return new(StudyTexts.Get("studyDocument.standardDeviationsWithTheirIntervals"), new ComponentBars(StudyTexts.Say("studyDocument.scatterAlong", axis.Axis), [.. parts.Select(Bar)]));
    }

    /// <summary>Every reading from the mean of its mark.</summary>
    private static DocumentPicture Cloud(StudyAnswer answer)
    {
        IReadOnlyList<StudyReading> all = answer.Request.Readings.All;
        Dictionary<string, CardPoint> means = all.GroupBy(r => r.Part).ToDictionary(g => g.Key, g => new CardPoint(g.Average(r => r.At.U), g.Average(r => r.At.V)));
        return new(
            StudyTexts.Get("studyDocument.everyReadingFromMeanMark"),
            new ReadingCloud(StudyTexts.Get("studyDocument.readings"), [.. all.GroupBy(r => r.Operator).Select(g => new CloudGroup(g.Key, [.. g.Select(r => r.At - means[r.Part])]))]));
    }

    private static DocumentBlock.Table Components(StudyAnswer answer)
    {
        bool photos = answer.Request.Readings.Photos;
        return new(
            "",
            [new(StudyTexts.Get("studyDocument.part"), Wraps: true), .. answer.Axes.SelectMany(a => (TableColumn[])[Number(StudyTexts.Say("studyDocument.along", a.Axis), "mm"), Number("95 %", "mm"), Number(StudyTexts.Get("studyDocument.gauge"), "%"), Number(StudyTexts.Get("studyDocument.tolerance"), "%")])],
            [
                .. StudyWords.Order(photos).Where(part => part != StudyPart.Parts)
                    .Select(part => new TableRow([StudyWords.Name(part, photos), .. answer.Axes.SelectMany(a => Cells(a.Study, part, StudyWords.FullWidth(answer)))])),
            ]);
    }

    private static string[] Cells(GaugeStudy study, StudyPart part, double width)
    {
        VarianceComponent c = study[part];
        return
        [
            StudyWords.Mm(c.StandardDeviation), StudyTexts.Say("studyDocument.to", StudyWords.Mm(c.DeviationInterval.Low), StudyWords.Mm(c.DeviationInterval.High)),
            StudyWords.Share(study, part) is { } share ? StudyWords.Percent(share) : "–", StudyWords.Percent(study.OfTolerance(part, width).Percent),
        ];
    }

    private static DocumentBlock.Table Anova(StudyAxis axis) => new(
        StudyTexts.Say("studyDocument.along2", axis.Axis),
        [new(StudyTexts.Get("studyDocument.source"), Wraps: true), Number(StudyTexts.Get("studyDocument.sumSquares"), "mm²"), Number(StudyTexts.Get("studyDocument.dof")), Number(StudyTexts.Get("studyDocument.meanSquare"), "mm²"), Number("F"), Number("p"), new(StudyTexts.Get("studyDocument.fAgainst"))],
        [
            .. axis.Study.Rows.Select(row => new TableRow(
            [
                StudyWords.Name(row.Source), Significant(row.SumOfSquares), Text(row.Dof, "0"), Significant(row.MeanSquare),
                row.Test is { } f ? Text(f.F, f.F < 1000 ? "0.000" : "0") : "–", row.Test is { } p ? StudyWords.P(p.Probability) : "–", string.Join(" + ", (row.Test?.Against ?? []).Select(StudyWords.Name)),
            ])),
        ]);

    private static TableColumn Number(string heading, string unit = "") => new(heading, unit, IsNumber: true);

    // Marks lie millimetres apart and readings micrometres: no fixed count of decimals suits both.
    private static string Significant(double value) => value == 0 ? "0" : Text(value, value >= 1 ? "0.0000" : value >= 0.001 ? "0.000000" : "0.000E0");

    private static string Text(double value, string format) => value.ToString(format, CultureInfo.InvariantCulture);

    private static Length Mm(double value) => Length.FromMillimetres(value);
}
