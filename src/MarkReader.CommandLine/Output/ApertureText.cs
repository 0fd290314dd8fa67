using System.Globalization;
using MarkReader.Alignment.Apertures;
using MarkReader.Alignment.Verdicts;
using MarkReader.Application.Apertures;

namespace MarkReader.CommandLine.Output;

/// <summary>An aperture and its beam for people.</summary>
internal static class ApertureText
{
    private const double LeastGain = 1e-4, LeastOffset = 0.005;

    public static string Of(ApertureFinding finding) => string.Join(
        Environment.NewLine,
        [
            .. Beam(finding),
            .. finding.Opening is { } opening ? Opening(opening) : [],
            .. Words.Of(finding.Size?.Warnings ?? []),
            Words.Cautions,
        ]);

    private static IEnumerable<string> Beam(ApertureFinding finding)
    {
        string from = finding.Size is null ? "" : ", from the marks";
        yield return $"beam: 1/e2 diameter {Words.Fixed(2 * finding.BeamRadius.Value.Millimetres, 2)} mm, standard uncertainty {Words.Fixed(2 * finding.BeamRadius.Uncertainty.Millimetres, 2)} mm{from}";
        if (finding.Size is not { } size)
            yield break;
        string fit = size.Fit.Probability is { } p ? $"chi-squared {Words.Fixed(size.Fit.ChiSquare, 2)} with {size.Fit.DegreesOfFreedom} degree{(size.Fit.DegreesOfFreedom == 1 ? "" : "s")} of freedom, p {Words.Probability(p)}" : "no mark more than needed, so that nothing tests the fit";
        // Two digits of the uncertainty; far from one, four of each.
        int decimals = 1 - (int)Math.Floor(Math.Log10(Math.Max(size.ThresholdUncertainty, 1e-12)));
        string Energy(double e) => decimals is >= 0 and <= 6 ? Words.Fixed(e, decimals) : e.ToString("G4", CultureInfo.InvariantCulture);
        yield return $"no mark appears below an energy of {Energy(size.Threshold)} (standard uncertainty {Energy(size.ThresholdUncertainty)}), in the unit of the energies; {fit}";
    }

    private static IEnumerable<string> Opening(OpeningFinding opening)
    {
        OpeningInput input = opening.Input;
        double distance = Math.Sqrt((input.OffsetU * input.OffsetU) + (input.OffsetV * input.OffsetV));
        yield return $"opening: diameter {Words.Fixed(input.Diameter, 2)} mm; the beam passes {Words.Fixed(distance, 2)} mm from its centre (u {Words.Place(input.OffsetU)}, v {Words.Place(input.OffsetV)} mm, standard uncertainty {Words.Fixed(input.Uncertainty, 3)} mm each)";
        Table table = new("power that passes", "%", "uncertainty/%", "95 % interval/%", "at least/%");
        Add(table, "now", opening.Now);
        Add(table, "in the centre", opening.Centred);
        yield return table.ToString();
        yield return Gain(opening);
        yield return "uncertainty: standard uncertainty; at least: with 95 % probability; for a Gaussian beam and an opening square to it";
    }

    private static string Gain(OpeningFinding opening) => opening.Gain < LeastGain
        ? "bringing the beam to the centre gains less than 0.01 % of its power: leave it"
        : $"bringing the beam to the centre gains {Percent(opening.Gain)} % of its power: {string.Join("; ", Steps(opening.Input))}";

    // An offset that its uncertainty explains, or too small to see, asks for nothing.
    private static IEnumerable<string> Steps(OpeningInput input)
    {
        bool Matters(double offset) => Math.Abs(offset) > Math.Max(LeastOffset, DecisionRule.GuardFactor * input.Uncertainty);
        if (Matters(input.OffsetU))
            yield return $"move the target's plate {Words.Fixed(Math.Abs(input.OffsetU), 2)} mm to the {(input.OffsetU > 0 ? "right" : "left")}, towards the beam";
        if (Matters(input.OffsetV))
            yield return input.OffsetV > 0
                ? $"the beam is {Words.Fixed(input.OffsetV, 2)} mm too high: put shims under the target"
                : $"the beam is {Words.Fixed(-input.OffsetV, 2)} mm too low: raise the tube's end and align the legs again";
        if (!Matters(input.OffsetU) && !Matters(input.OffsetV))
            yield return "neither offset is significant against its uncertainty: repeat the mark first";
    }

    private static void Add(Table table, string name, TransmittedPower power) =>
        table.Add(name, Percent(power.Mean), Percent(power.Uncertainty), $"{Percent(power.Low)} to {Percent(power.High)}", Percent(power.AtLeast));

    // Never -0.00, whatever rounding leaves of no gain.
    private static string Percent(double part) => Words.Fixed(Math.Round(100 * part, 2) + 0.0, 2);
}
