using MarkReader.Application.Studies;
using MarkReader.Metrology.Studies;
using MarkReader.Quantities;
using MarkReader.Service.Display;

namespace MarkReader.Service.Pages.Studies;

/// <summary>The scatter of pulses as its page shows it.</summary>
public sealed class ScatterView(ScatterAnswer answer, Figures figures)
{
    public string Result => ScatterWords.Result(answer, figures.Record);

    /// <summary>Names of texts, values, and what else belongs to them.</summary>
    public IEnumerable<(string Key, string Value, string About)> Figures
    {
        get
        {
            PulseScatter s = answer.Scatter;
            yield return ("stability", Mm(s.PositionalStability.Millimetres), figures.Row($"u {Mm(s.PositionalStabilityU.Millimetres)}", $"v {Mm(s.PositionalStabilityV.Millimetres)}"));
            yield return ("principal", $"{figures.Value(s.Principal.SemiMajor, 3)} × {Mm(s.Principal.SemiMinor)}", figures.Number(answer.Direction, 0) + "°");
            if (answer.Path is not { } path)
                yield break;
            (Angle u, Angle v) = s.AngularStability(path);
            yield return ("angular", $"{figures.Number(u.Milliradians, 3)} × {figures.Number(v.Milliradians, 3)}\u00a0mrad", figures.Short(path.Millimetres));
        }
    }

    public IReadOnlyList<string> Advice => [.. ScatterWords.Notes(answer, figures.Record), figures.Sentence(ScatterWords.Plan(answer))];

    public IEnumerable<(string Key, AxisScatter Scatter)> Rows => [("u", answer.Scatter.U), ("v", answer.Scatter.V), ("both", answer.Scatter.Component)];

    private string Mm(double mm) => figures.Length(mm, 3);
}
