using System.Globalization;
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
            new DocumentBlock.Banner(DocumentTone.Plain, ScatterWords.Line(answer), [ScatterWords.Result(answer), "This line goes into the machine's file; later visits then reckon with it."]),
            new DocumentBlock.Pictures([Cloud(answer), Bars(answer)]),
            Table(s),
            new DocumentBlock.Facts([.. Stability(answer)]),
            new DocumentBlock.Sentences([.. ScatterWords.Notes(answer), ScatterWords.Plan(answer), ScatterWords.FromMemory]),
        ];
        return new("Scatter of pulses", string.Create(CultureInfo.InvariantCulture, $"{s.Marks.Count} pulses at one station"), blocks)
        {
            Subject = "Scatter of pulses",
            Foot = $"MarkReader {ProgramVersion.Current}",
            Written = written,
        };
    }

    /// <summary>Names and values of the stability figures.</summary>
    public static IEnumerable<DocumentFact> Stability(ScatterAnswer answer)
    {
        PulseScatter s = answer.Scatter;
        yield return new("principal axes", string.Create(CultureInfo.InvariantCulture, $"{ScatterWords.Mm(s.Principal.SemiMajor)} × {ScatterWords.Mm(s.Principal.SemiMinor)} mm, the larger at {s.Principal.Direction.Degrees:0}° from u (standard deviations, as observed)"));
        yield return new("positional stability", $"u {ScatterWords.Mm(s.PositionalStabilityU.Millimetres)} mm, v {ScatterWords.Mm(s.PositionalStabilityV.Millimetres)} mm, both together {ScatterWords.Mm(s.PositionalStability.Millimetres)} mm");
        if (answer.Path is { } path)
        {
            (Angle u, Angle v) = s.AngularStability(path);
            yield return new("angular stability", string.Create(CultureInfo.InvariantCulture, $"u {u.Milliradians:0.000} mrad, v {v.Milliradians:0.000} mrad over a path of {path.Millimetres:0.#} mm, if the whole scatter is a turning of the beam"));
        }
    }

    private static DocumentPicture Cloud(ScatterAnswer answer)
    {
        PulseScatter s = answer.Scatter;
        CardVector[] all = [.. s.Marks.Select(m => m.Point - s.Mean)];
        return new("Marks from their mean.", new ReadingCloud("Marks", [new("a mark", all)])
        {
            Region = s.Observed.Ellipse95(),
            RegionName = "holds 95 %",
            Odd = s.Outlier is { StandsOut: true } o ? all[o.Index] : null,
            OddName = "stands out",
        });
    }

    private static DocumentPicture Bars(ScatterAnswer answer)
    {
        static ComponentBar Bar(string name, AxisScatter s, bool sum) => new(name, Mm(s.Corrected), Mm(s.CorrectedInterval.Low), Mm(s.CorrectedInterval.High), sum);
        PulseScatter p = answer.Scatter;
        return new("Bars: standard deviation of a mark, the photos' own uncertainty taken off where it is known. Lines: 95 % interval.", new ComponentBars("Scatter", [Bar("along u", p.U, false), Bar("along v", p.V, false), Bar("either axis, both together", p.Component, true)]));
    }

    private static DocumentBlock.Table Table(PulseScatter s) => new(
        "",
        [new("axis", Wraps: true), Number("as observed"), Number("from"), Number("to"), Number("corrected"), Number("from"), Number("to")],
        [Row("u", s.U), Row("v", s.V), Row("either, both together", s.Component)]);

    private static TableRow Row(string name, AxisScatter s) => new(
        [name, ScatterWords.Mm(s.Observed), ScatterWords.Mm(s.Interval.Low), ScatterWords.Mm(s.Interval.High), ScatterWords.Mm(s.Corrected), ScatterWords.Mm(s.CorrectedInterval.Low), ScatterWords.Mm(s.CorrectedInterval.High)]);

    private static TableColumn Number(string heading) => new(heading, "mm", IsNumber: true);

    private static Length Mm(double value) => Length.FromMillimetres(value);
}
