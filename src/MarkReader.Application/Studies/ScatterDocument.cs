using MarkReader.Application.Budgets;
using MarkReader.Application.Records;
using MarkReader.Application.Storage;
using MarkReader.Application.Texts;
using MarkReader.Drawing.Documents;
using MarkReader.Metrology.Studies;
using MarkReader.Quantities;

namespace MarkReader.Application.Studies;

/// <summary>The scatter of pulses as a document of one page.</summary>
public static class ScatterDocument
{
    /// <param name="name">What the study is called; null for none.</param>
    public static SheetDocument Of(ScatterAnswer answer, DateTimeOffset written, RecordFormat? format = null, string? name = null)
    {
        StudyNumbers n = new(format);
        PulseScatter s = answer.Scatter;
        List<DocumentBlock> blocks =
        [
            Banner(answer, format),
            new DocumentBlock.Pictures([.. StudyPictures.Of(answer, format).Select(p => new DocumentPicture(p.Caption, p.Drawing))]),
            Table(s, n),
            new DocumentBlock.Facts([.. Stability(answer, format)]),
            new DocumentBlock.Sentences([.. ScatterWords.Notes(answer, format), ScatterWords.Plan(answer), ScatterWords.Stability]),
            new DocumentBlock.Paragraph(BudgetTexts.Get("cautions"), Small: true),
        ];
        return new(name ?? StudyTexts.Get("scatterDocument.scatterPulses"), StudyTexts.Say("scatterDocument.pulsesAtOneStation", s.Marks.Count), blocks)
        {
            Subject = StudyTexts.Get("scatterDocument.scatterPulses"),
            Foot = $"MarkReader {ProgramVersion.Current}",
            Written = written,
        };
    }

    /// <summary>Names and values of the stability figures.</summary>
    public static IEnumerable<DocumentFact> Stability(ScatterAnswer answer, RecordFormat? format = null)
    {
        StudyNumbers n = new(format);
        PulseScatter s = answer.Scatter;
        yield return new(StudyTexts.Get("scatterDocument.principalAxes"), StudyTexts.Say("scatterDocument.mmLargerAtFromU", n.Scatter(s.Principal.SemiMajor), n.Scatter(s.Principal.SemiMinor), answer.Direction, n.Unit));
        yield return new(StudyTexts.Get("scatterDocument.positionalStability"), CommaPairs.Apart(StudyTexts.Say("scatterDocument.uMmVMmBoth", n.Scatter(s.PositionalStabilityU.Millimetres), n.Scatter(s.PositionalStabilityV.Millimetres), n.Scatter(s.PositionalStability.Millimetres), n.Unit)));
        if (answer.Path is { } path)
        {
            (Angle u, Angle v) = s.AngularStability(path);
            yield return new(StudyTexts.Get("scatterDocument.angularStability"), CommaPairs.Apart(StudyTexts.Say("scatterDocument.uMradVMradOver", n.Number(u.Milliradians, 3), n.Number(v.Milliradians, 3), n.Short(path.Millimetres), n.Unit)));
        }
    }

    private static DocumentBlock.Banner Banner(ScatterAnswer answer, RecordFormat? format) => ScatterWords.Line(answer) is { } line
        ? new(DocumentTone.Plain, line, [ScatterWords.Result(answer, format), StudyTexts.Get("scatterDocument.thisLineGoesIntoMachine")])
        : new(DocumentTone.Open, StudyTexts.Get("scatterDocument.noValue"), [ScatterWords.Result(answer, format)]);

    private static DocumentBlock.Table Table(PulseScatter s, StudyNumbers n) => new(
        "",
        [new(StudyTexts.Get("scatterDocument.axis"), Wraps: true), Number(StudyTexts.Get("scatterDocument.asObserved"), n), Number(StudyTexts.Get("scatterDocument.from"), n), Number(StudyTexts.Get("scatterDocument.to"), n), Number(StudyTexts.Get("scatterDocument.corrected"), n), Number(StudyTexts.Get("scatterDocument.from"), n), Number(StudyTexts.Get("scatterDocument.to"), n)],
        [Row("u", s.U, n), Row("v", s.V, n), Row(StudyTexts.Get("scatterDocument.eitherBothTogether"), s.Component, n)]);

    private static TableRow Row(string name, AxisScatter s, StudyNumbers n) => new(
        [name, n.Scatter(s.Observed), n.Scatter(s.Interval.Low), n.Scatter(s.Interval.High), n.Scatter(s.Corrected), n.Scatter(s.CorrectedInterval.Low), n.Scatter(s.CorrectedInterval.High)]);

    private static TableColumn Number(string heading, StudyNumbers n) => new(heading, n.Unit, IsNumber: true);
}
