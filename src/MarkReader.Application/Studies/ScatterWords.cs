using System.Globalization;
using MarkReader.Application.Records;
using MarkReader.Metrology.Studies;

namespace MarkReader.Application.Studies;

/// <summary>The scatter of pulses in words, for the command line and for paper.</summary>
public static class ScatterWords
{
    /// <summary>What the figures of stability are; their forms for both axes together and for the angle are from memory of ISO 11670.</summary>
    public static string Stability => StudyTexts.Get("scatterWords.stability");

    public static string Result(ScatterAnswer answer, RecordFormat? format = null)
    {
        StudyNumbers n = new(format);
        PulseScatter scatter = answer.Scatter;
        int count = scatter.Marks.Count;
        if (scatter.IsStill)
            return StudyTexts.Say("scatterWords.still", count);
        AxisScatter c = scatter.LargerAxis ?? scatter.Component;
        string own = answer.Marks.IsStated ? StudyTexts.Get("scatterWords.photosOwnUncertaintyTakenOff") : "";
        if (answer.IsHidden)
            return StudyTexts.Say("scatterWords.hidden", count, n.Scatter(c.CorrectedInterval.High), n.Unit);
        return answer.LargerAxis is { } axis
            ? StudyTexts.Say("scatterWords.alongLargerAxis", count, n.Scatter(c.Corrected), own, n.Scatter(c.CorrectedInterval.Low), n.Scatter(c.CorrectedInterval.High), n.Unit, axis)
            : StudyTexts.Say("scatterWords.pulsesMarkScattersByMm", count, n.Scatter(c.Corrected), own, n.Scatter(c.CorrectedInterval.Low), n.Scatter(c.CorrectedInterval.High), n.Unit);
    }

    /// <summary>The line for a machine's file; null when no value is offered.</summary>
    public static string? Line(ScatterAnswer answer) => answer.ForVisits is { } value ? string.Create(CultureInfo.InvariantCulture, $"\"pulseScatter\": {value:0.0##}") : null;

    /// <summary>Why no value is offered, and what to do; null when one is.</summary>
    public static string? NotOffered(ScatterAnswer answer, RecordFormat? format = null)
    {
        StudyNumbers n = new(format);
        return answer.NotOffered is { } why ? StudyTexts.Say("scatterWords.notOffered", n.SaidLimits(why.What), n.SaidLimits(why.Remedy)) : null;
    }

    public static IEnumerable<string> Notes(ScatterAnswer answer, RecordFormat? format = null)
    {
        StudyNumbers n = new(format);
        PulseScatter scatter = answer.Scatter;
        if (NotOffered(answer, format) is { } why)
            yield return why;
        foreach (string note in answer.Marks.Notes)
            yield return note;
        if (!answer.Marks.IsStated)
            yield return StudyTexts.Get("scatterWords.marksOwnUncertaintyNotKnown");
        if (answer.IsHidden && answer.NotOffered is null)
            yield return StudyTexts.Get("scatterWords.allScatterExplainedByPhotos");
        else if (answer.Marks.IsStated && !scatter.IsStill && !answer.IsHidden && (scatter.U.Corrected == 0 || scatter.V.Corrected == 0))
            yield return StudyTexts.Say("scatterWords.alongPhotosOwnUncertaintyExplains", scatter.U.Corrected == 0 ? "u" : "v");
        if (scatter.Outlier is { StandsOut: true } odd)
            yield return StudyTexts.Say("scatterWords.liesFarFromOthersP", answer.Marks.All[odd.Index].Name, n.PAtMost(odd.Probability));
        if (scatter.Marks.Count < PulseOutlier.LeastPulses)
            yield return StudyTexts.Say("scatterWords.withFewerThanPulsesNone", PulseOutlier.LeastPulses);
        if (scatter.LargerAxis is { } larger && answer.NotOffered is null)
            yield return StudyTexts.Say("scatterWords.axesDifferVisitTakesOne", n.Scatter(larger.Corrected), n.Unit);
    }

    public static string Plan(ScatterAnswer answer) => Plan(answer.Plan);

    public static string Plan(PulsePlan plan) => StudyTexts.Say("scatterWords.forStandardDeviationAtPulses", StudyWords.Percent(100 * plan.Wanted), plan.Pulses);

    public static string Mm(double mm) => mm.ToString("0.000", CultureInfo.InvariantCulture);
}
