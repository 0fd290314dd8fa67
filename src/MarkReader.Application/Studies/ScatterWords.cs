using System.Globalization;
using MarkReader.Metrology.Studies;

namespace MarkReader.Application.Studies;

/// <summary>The scatter of pulses in words, for the command line and for paper.</summary>
public static class ScatterWords
{
    public static string FromMemory => StudyTexts.Get("scatterWords.stabilityFourStandardDeviationsOn");

    public static string Result(ScatterAnswer answer)
    {
        AxisScatter c = answer.Scatter.Component;
        string own = answer.Marks.IsStated ? StudyTexts.Get("scatterWords.photosOwnUncertaintyTakenOff") : "";
        return StudyTexts.Say("scatterWords.pulsesMarkScattersByMm", answer.Scatter.Marks.Count, Mm(c.Corrected), own, Mm(c.CorrectedInterval.Low), Mm(c.CorrectedInterval.High));
    }

    /// <summary>The line for a machine's file.</summary>
    public static string Line(ScatterAnswer answer) => string.Create(CultureInfo.InvariantCulture, $"\"pulseScatter\": {answer.ForVisits:0.0##}");

    public static IEnumerable<string> Notes(ScatterAnswer answer)
    {
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
            yield return StudyTexts.Say("scatterWords.liesFarFromOthersP", answer.Marks.All[odd.Index].Name, StudyWords.P(odd.Probability));
        if (scatter.Outlier is null)
            yield return StudyTexts.Say("scatterWords.withFewerThanPulsesNone", PulseOutlier.LeastPulses);
        double larger = Math.Max(scatter.U.Corrected, scatter.V.Corrected);
        if (larger > 2 * Math.Min(scatter.U.Corrected, scatter.V.Corrected) && larger > 0)
            yield return StudyTexts.Say("scatterWords.axesDifferVisitTakesOne", Mm(larger));
    }

    public static string Plan(ScatterAnswer answer) => StudyTexts.Say("scatterWords.forStandardDeviationAtPulses", StudyWords.Percent(100 * answer.Plan.Wanted), answer.Plan.Pulses);

    public static string Mm(double mm) => mm.ToString("0.000", CultureInfo.InvariantCulture);
}
