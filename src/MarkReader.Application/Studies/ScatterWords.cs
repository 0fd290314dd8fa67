using System.Globalization;
using MarkReader.Application.Records;
using MarkReader.Metrology.Studies;

namespace MarkReader.Application.Studies;

/// <summary>The scatter of pulses in words, for the command line and for paper.</summary>
public static class ScatterWords
{
    public static string FromMemory => StudyTexts.Get("scatterWords.stabilityFourStandardDeviationsOn");

    public static string Result(ScatterAnswer answer, RecordFormat? format = null)
    {
        StudyNumbers n = new(format);
        AxisScatter c = answer.Scatter.Component;
        string own = answer.Marks.IsStated ? StudyTexts.Get("scatterWords.photosOwnUncertaintyTakenOff") : "";
        return StudyTexts.Say("scatterWords.pulsesMarkScattersByMm", answer.Scatter.Marks.Count, n.Scatter(c.Corrected), own, n.Scatter(c.CorrectedInterval.Low), n.Scatter(c.CorrectedInterval.High), n.Unit);
    }

    /// <summary>The line for a machine's file.</summary>
    public static string Line(ScatterAnswer answer) => string.Create(CultureInfo.InvariantCulture, $"\"pulseScatter\": {answer.ForVisits:0.0##}");

    public static IEnumerable<string> Notes(ScatterAnswer answer, RecordFormat? format = null)
    {
        StudyNumbers n = new(format);
        PulseScatter scatter = answer.Scatter;
        foreach (string note in answer.Marks.Notes)
            yield return note;
        if (!answer.Marks.IsStated)
            yield return StudyTexts.Get("scatterWords.marksOwnUncertaintyNotKnown");
        if (scatter.Component.Corrected == 0)
            yield return StudyTexts.Get("scatterWords.allScatterExplainedByPhotos");
        else if (scatter.U.Corrected == 0 || scatter.V.Corrected == 0)
            yield return StudyTexts.Say("scatterWords.alongPhotosOwnUncertaintyExplains", scatter.U.Corrected == 0 ? "u" : "v");
        if (scatter.Outlier is { StandsOut: true } odd)
            yield return StudyTexts.Say("scatterWords.liesFarFromOthersP", answer.Marks.All[odd.Index].Name, n.P(odd.Probability));
        if (scatter.Outlier is null)
            yield return StudyTexts.Say("scatterWords.withFewerThanPulsesNone", PulseOutlier.LeastPulses);
        double larger = Math.Max(scatter.U.Corrected, scatter.V.Corrected);
        if (larger > 2 * Math.Min(scatter.U.Corrected, scatter.V.Corrected) && larger > 0)
            yield return StudyTexts.Say("scatterWords.axesDifferVisitTakesOne", n.Scatter(larger), n.Unit);
    }

    public static string Plan(ScatterAnswer answer) => Plan(answer.Plan);

    public static string Plan(PulsePlan plan) => StudyTexts.Say("scatterWords.forStandardDeviationAtPulses", StudyWords.Percent(100 * plan.Wanted), plan.Pulses);

    public static string Mm(double mm) => mm.ToString("0.000", CultureInfo.InvariantCulture);
}
