using MarkReader.Application.Records;
using MarkReader.Drawing.Pictures;
using MarkReader.Drawing.Studies;
using MarkReader.Metrology.Studies;
using MarkReader.Quantities;

namespace MarkReader.Application.Studies;

/// <summary>A picture of a study.</summary>
/// <param name="Name">In addresses: bars-u, bars-v, bars, cloud.</param>
/// <param name="Caption">What it shows.</param>
public sealed record StudyPicture(string Name, string Caption, IPicture Drawing);

/// <summary>The pictures of studies, for pages and for paper.</summary>
public static class StudyPictures
{
    /// <summary>The parts of the scatter along each axis, and every reading.</summary>
    public static IReadOnlyList<StudyPicture> Of(StudyAnswer answer, RecordFormat? format = null)
    {
        StudyNumbers n = new(format);
        PictureStyle style = n.Style(n.Fine);
        return [.. answer.Axes.Select(a => Bars(a, answer.Request.Readings.Photos, style)), Cloud(answer, style)];
    }

    /// <summary>The marks with the ellipse that holds 95 % of such pulses, and the scatter along each axis.</summary>
    public static IReadOnlyList<StudyPicture> Of(ScatterAnswer answer, RecordFormat? format = null)
    {
        StudyNumbers n = new(format);
        PictureStyle style = n.Style(n.Scatter);
        return [Cloud(answer, style), Bars(answer, style)];
    }

    private static StudyPicture Bars(StudyAxis axis, bool photos, PictureStyle style)
    {
        ComponentBar Bar(StudyPart part)
        {
            VarianceComponent c = axis.Study[part];
            return new(StudyWords.Name(part, photos), Mm(c.StandardDeviation), Mm(c.DeviationInterval.Low), Mm(c.DeviationInterval.High), part is StudyPart.Gauge);
        }

        StudyPart[] parts = [.. StudyWords.Order(photos).Where(p => p is not (StudyPart.Parts or StudyPart.Reproducibility) && (!photos || p != StudyPart.Repeatability))];
        ComponentBars bars = new(StudyTexts.Say("studyDocument.scatterAlong", axis.Axis), [.. parts.Select(Bar)]) { Style = style };
        return new("bars-" + axis.Axis, StudyTexts.Get("studyDocument.standardDeviationsWithTheirIntervals"), bars);
    }

    // Every reading from the mean of its mark.
    private static StudyPicture Cloud(StudyAnswer answer, PictureStyle style)
    {
        IReadOnlyList<StudyReading> all = answer.Request.Readings.All;
        Dictionary<string, CardPoint> means = all.GroupBy(r => r.Part).ToDictionary(g => g.Key, g => new CardPoint(g.Average(r => r.At.U), g.Average(r => r.At.V)));
        CloudGroup[] groups = [.. all.GroupBy(r => r.Operator).Select(g => new CloudGroup(g.Key, [.. g.Select(r => r.At - means[r.Part])]))];
        return new("cloud", StudyTexts.Get("studyDocument.everyReadingFromMeanMark"), new ReadingCloud(StudyTexts.Get("studyDocument.readings"), groups) { Style = style });
    }

    private static StudyPicture Cloud(ScatterAnswer answer, PictureStyle style)
    {
        PulseScatter s = answer.Scatter;
        CardVector[] all = [.. s.Marks.Select(m => m.Point - s.Mean)];
        return new("cloud", StudyTexts.Get("scatterDocument.marksFromTheirMean"), new ReadingCloud(StudyTexts.Get("scatterDocument.marks"), [new(StudyTexts.Get("scatterDocument.mark"), all)])
        {
            Region = s.Observed.Ellipse95(),
            RegionName = StudyTexts.Get("scatterDocument.holds"),
            Odd = s.Outlier is { StandsOut: true } o ? all[o.Index] : null,
            OddName = StudyTexts.Get("scatterDocument.standsOut"),
            Style = style,
        });
    }

    private static StudyPicture Bars(ScatterAnswer answer, PictureStyle style)
    {
        static ComponentBar Bar(string name, AxisScatter s, bool sum) => new(name, Mm(s.Corrected), Mm(s.CorrectedInterval.Low), Mm(s.CorrectedInterval.High), sum);
        PulseScatter p = answer.Scatter;
        ComponentBars bars = new(
            StudyTexts.Get("scatterDocument.scatter"),
            [Bar(StudyTexts.Get("scatterDocument.alongU"), p.U, false), Bar(StudyTexts.Get("scatterDocument.alongV"), p.V, false), Bar(StudyTexts.Get("scatterDocument.eitherAxisBothTogether"), p.Component, true)])
        {
            Style = style,
        };
        return new("bars", StudyTexts.Get("scatterDocument.barsStandardDeviationMarkPhotos"), bars);
    }

    private static Length Mm(double value) => Length.FromMillimetres(value);
}
