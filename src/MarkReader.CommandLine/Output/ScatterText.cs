using MarkReader.Application.Studies;
using MarkReader.Drawing.Documents;
using MarkReader.Metrology.Studies;

namespace MarkReader.CommandLine.Output;

/// <summary>The scatter of pulses for people.</summary>
internal static class ScatterText
{
    public static string Of(ScatterAnswer answer)
    {
        Table table = new(OutputTexts.Get("scatterText.standardDeviation"), OutputTexts.Get("scatterText.observedMm"), "95 %", OutputTexts.Get("scatterText.correctedMm"), "95 %");
        foreach ((string name, AxisScatter s) in (IEnumerable<(string, AxisScatter)>)[("u", answer.Scatter.U), ("v", answer.Scatter.V), (OutputTexts.Get("scatterText.eitherBothTogether"), answer.Scatter.Component)])
        {
            table.Add(
                name, ScatterWords.Mm(s.Observed), OutputTexts.Say("scatterText.to", ScatterWords.Mm(s.Interval.Low), ScatterWords.Mm(s.Interval.High)),
                ScatterWords.Mm(s.Corrected), OutputTexts.Say("scatterText.to", ScatterWords.Mm(s.CorrectedInterval.Low), ScatterWords.Mm(s.CorrectedInterval.High)));
        }

        return string.Join(
            Environment.NewLine,
            [
                ScatterWords.Result(answer), "",
                table.ToString(), OutputTexts.Get("scatterText.correctedPhotosOwnUncertaintyTaken"), "",
                .. ScatterDocument.Stability(answer).Select((DocumentFact f) => $"{f.Name}: {f.Text}"), ScatterWords.Stability, "",
                .. ScatterWords.Notes(answer), ScatterWords.Plan(answer), "",
                .. ScatterWords.Line(answer) is { } line ? (string[])[OutputTexts.Get("scatterText.forMachineFileSoThat"), $"  {line}", ""] : [],
                Words.Cautions,
            ]);
    }
}
