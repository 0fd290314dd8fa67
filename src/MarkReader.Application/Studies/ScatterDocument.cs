using MarkReader.Application.Storage;
using MarkReader.Drawing.Documents;
using MarkReader.Drawing.Studies;
using MarkReader.Metrology.Studies;
using MarkReader.Quantities;

namespace MarkReader.Application.Studies;

/// <summary>The scatter of pulses as a document of one page.</summary>
public static class ScatterDocument
{
    public static SheetDocument Of(ScatterAnswer answer, DateTimeOffset written)
    {
        PulseScatter s = answer.Scatter;
        List<DocumentBlock> blocks =
        [
            new DocumentBlock.Banner(DocumentTone.Plain, ScatterWords.Line(answer), [ScatterWords.Result(answer), StudyTexts.Get("scatterDocument.thisLineGoesIntoMachine")]),
            new DocumentBlock.Pictures([Cloud(answer), Bars(answer)]),
            Table(s),
            new DocumentBlock.Facts([.. Stability(answer)]),
            new DocumentBlock.Sentences([.. ScatterWords.Notes(answer), ScatterWords.Plan(answer), ScatterWords.FromMemory]),
        ];
        return new(StudyTexts.Get("scatterDocument.scatterPulses"), StudyTexts.Say("scatterDocument.pulsesAtOneStation", s.Marks.Count), blocks)
        {
            Subject = StudyTexts.Get("scatterDocument.scatterPulses"),
            Foot = $"MarkReader {ProgramVersion.Current}",
            Written = written,
        };
    }

    /// <summary>Names and values of the stability figures.</summary>
    public static IEnumerable<DocumentFact> Stability(ScatterAnswer answer)
    {
        PulseScatter s = answer.Scatter;
        yield return new(StudyTexts.Get("scatterDocument.principalAxes"), StudyTexts.Say("scatterDocument.mmLargerAtFromU", ScatterWords.Mm(s.Principal.SemiMajor), ScatterWords.Mm(s.Principal.SemiMinor), s.Principal.Direction.Degrees));
        yield return new(StudyTexts.Get("scatterDocument.positionalStability"), StudyTexts.Say("scatterDocument.uMmVMmBoth", ScatterWords.Mm(s.PositionalStabilityU.Millimetres), ScatterWords.Mm(s.PositionalStabilityV.Millimetres), ScatterWords.Mm(s.PositionalStability.Millimetres)));
        if (answer.Path is { } path)
        {
            (Angle u, Angle v) = s.AngularStability(path);
            yield return new(StudyTexts.Get("scatterDocument.angularStability"), StudyTexts.Say("scatterDocument.uMradVMradOver", u.Milliradians, v.Milliradians, path.Millimetres));
        }
    }

    private static DocumentPicture Cloud(ScatterAnswer answer)
    {
        PulseScatter s = answer.Scatter;
        CardVector[] all = [.. s.Marks.Select(m => m.Point - s.Mean)];
        return new(StudyTexts.Get("scatterDocument.marksFromTheirMean"), new ReadingCloud(StudyTexts.Get("scatterDocument.marks"), [new(StudyTexts.Get("scatterDocument.mark"), all)])
        {
            Region = s.Observed.Ellipse95(),
            RegionName = StudyTexts.Get("scatterDocument.holds"),
            Odd = s.Outlier is { StandsOut: true } o ? all[o.Index] : null,
            OddName = StudyTexts.Get("scatterDocument.standsOut"),
        });
    }

    private static DocumentPicture Bars(ScatterAnswer answer)
    {
        static ComponentBar Bar(string name, AxisScatter s, bool sum) => new(name, Mm(s.Corrected), Mm(s.CorrectedInterval.Low), Mm(s.CorrectedInterval.High), sum);
        PulseScatter p = answer.Scatter;
        return new(StudyTexts.Get("scatterDocument.barsStandardDeviationMarkPhotos"), new ComponentBars(StudyTexts.Get("scatterDocument.scatter"), [Bar(StudyTexts.Get("scatterDocument.alongU"), p.U, false), Bar(StudyTexts.Get("scatterDocument.alongV"), p.V, false), Bar(StudyTexts.Get("scatterDocument.eitherAxisBothTogether"), p.Component, true)]));
    }

    private static DocumentBlock.Table Table(PulseScatter s) => new(
        "",
        [new(StudyTexts.Get("scatterDocument.axis"), Wraps: true), Number(StudyTexts.Get("scatterDocument.asObserved")), Number(StudyTexts.Get("scatterDocument.from")), Number(StudyTexts.Get("scatterDocument.to")), Number(StudyTexts.Get("scatterDocument.corrected")), Number(StudyTexts.Get("scatterDocument.from")), Number(StudyTexts.Get("scatterDocument.to"))],
        [Row("u", s.U), Row("v", s.V), Row(StudyTexts.Get("scatterDocument.eitherBothTogether"), s.Component)]);

    private static TableRow Row(string name, AxisScatter s) => new(
        [name, ScatterWords.Mm(s.Observed), ScatterWords.Mm(s.Interval.Low), ScatterWords.Mm(s.Interval.High), ScatterWords.Mm(s.Corrected), ScatterWords.Mm(s.CorrectedInterval.Low), ScatterWords.Mm(s.CorrectedInterval.High)]);

    private static TableColumn Number(string heading) => new(heading, "mm", IsNumber: true);

    private static Length Mm(double value) => Length.FromMillimetres(value);
}
