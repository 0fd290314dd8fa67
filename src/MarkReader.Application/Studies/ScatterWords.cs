using System.Globalization;
using MarkReader.Metrology.Studies;

namespace MarkReader.Application.Studies;

/// <summary>The scatter of pulses in words, for the command line and for paper.</summary>
public static class ScatterWords
{
    public const string FromMemory = "Stability: four standard deviations on each axis (ISO 11670). The forms for both axes together and for the angle are from memory of that standard; check it before quoting them.";

    public static string Result(ScatterAnswer answer)
    {
        AxisScatter c = answer.Scatter.Component;
        string own = answer.Marks.IsStated ? ", the photos' own uncertainty taken off" : "";
        return $"{answer.Scatter.Marks.Count} pulses: a mark scatters by {Mm(c.Corrected)} mm on each axis (standard deviation, both axes together{own}; 95 %: {Mm(c.CorrectedInterval.Low)} to {Mm(c.CorrectedInterval.High)}).";
    }

    /// <summary>The line for a machine's file.</summary>
    public static string Line(ScatterAnswer answer) => string.Create(CultureInfo.InvariantCulture, $"\"pulseScatter\": {answer.ForVisits:0.0##}");

    public static IEnumerable<string> Notes(ScatterAnswer answer)
    {
        PulseScatter scatter = answer.Scatter;
        foreach (string note in answer.Marks.Notes)
            yield return note;
        if (!answer.Marks.IsStated)
            yield return "The marks' own uncertainty is not known and not taken off.";
        if (scatter.Component.Corrected == 0)
            yield return "All scatter is explained by the photos' own uncertainty. The value for visits is the upper end of the interval, to be on the safe side.";
        else if (scatter.U.Corrected == 0 || scatter.V.Corrected == 0)
            yield return $"Along {(scatter.U.Corrected == 0 ? "u" : "v")} the photos' own uncertainty explains all scatter; it stands as 0.";
        if (scatter.Outlier is { StandsOut: true } odd)
            yield return $"{answer.Marks.All[odd.Index].Name} lies far from the others (p at most {StudyWords.P(odd.Probability)}): look at it; leave it out only when you know what went wrong.";
        if (scatter.Outlier is null)
            yield return $"With fewer than {PulseOutlier.LeastPulses} pulses none can be told as standing out.";
        double larger = Math.Max(scatter.U.Corrected, scatter.V.Corrected);
        if (larger > 2 * Math.Min(scatter.U.Corrected, scatter.V.Corrected) && larger > 0)
            yield return $"The axes differ. A visit takes one value for both; {Mm(larger)}, that of the larger axis, is on the safe side.";
    }

    public static string Plan(ScatterAnswer answer) => string.Create(
        CultureInfo.InvariantCulture,
        $"For the standard deviation to ±{StudyWords.Percent(100 * answer.Plan.Wanted)} % at 95 %: {answer.Plan.Pulses} pulses.");

    public static string Mm(double mm) => mm.ToString("0.000", CultureInfo.InvariantCulture);
}
