using MarkReader.Application.Studies;
using MarkReader.Drawing.Documents;
using MarkReader.Metrology.Studies;

namespace MarkReader.CommandLine.Output;

/// <summary>The scatter of pulses for people.</summary>
internal static class ScatterText
{
    public static string Of(ScatterAnswer answer)
    {
        Table table = new("standard deviation", "observed/mm", "95 %", "corrected/mm", "95 %");
        foreach ((string name, AxisScatter s) in (IEnumerable<(string, AxisScatter)>)[("u", answer.Scatter.U), ("v", answer.Scatter.V), ("either, both together", answer.Scatter.Component)])
        {
            table.Add(
                name, ScatterWords.Mm(s.Observed), $"{ScatterWords.Mm(s.Interval.Low)} to {ScatterWords.Mm(s.Interval.High)}",
                ScatterWords.Mm(s.Corrected), $"{ScatterWords.Mm(s.CorrectedInterval.Low)} to {ScatterWords.Mm(s.CorrectedInterval.High)}");
        }

        return string.Join(
            Environment.NewLine,
            [
                ScatterWords.Result(answer), "",
                table.ToString(), "corrected: the photos' own uncertainty taken off in squares, never below 0", "",
                .. ScatterDocument.Stability(answer).Select((DocumentFact f) => $"{f.Name}: {f.Text}"), ScatterWords.FromMemory, "",
                .. ScatterWords.Notes(answer), ScatterWords.Plan(answer), "",
                "For the machine's file, so that later visits reckon with it:", $"  {ScatterWords.Line(answer)}", "",
                Words.Cautions,
            ]);
    }
}
