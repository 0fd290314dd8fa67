using System.Globalization;
using MarkReader.Alignment.Apertures;
using MarkReader.Alignment.Verdicts;
using MarkReader.Application.Apertures;
using static MarkReader.Quantities.Texts<MarkReader.CommandLine.Output.OutputTexts>;

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
        string from = finding.Size is null ? "" : Get("aperture.fromTheMarks");
        yield return Say("aperture.beam1E2Diameter", Words.Fixed(2 * finding.BeamRadius.Value.Millimetres, 2), Words.Fixed(2 * finding.BeamRadius.Uncertainty.Millimetres, 2), from);
        if (finding.Size is not { } size)
            yield break;
        string fit = size.Fit.Probability is { } p ? size.Fit.DegreesOfFreedom == 1 ? Say("aperture.chiSquaredWith1", Words.Fixed(size.Fit.ChiSquare, 2), Words.Probability(p))
            : Say("aperture.chiSquaredWithDegrees", Words.Fixed(size.Fit.ChiSquare, 2), size.Fit.DegreesOfFreedom, Words.Probability(p)) : Get("aperture.noMarkMoreThan");
        // Two digits of the uncertainty; far from one, four of each.
        int decimals = 1 - (int)Math.Floor(Math.Log10(Math.Max(size.ThresholdUncertainty, 1e-12)));
        string Energy(double e) => decimals is >= 0 and <= 6 ? Words.Fixed(e, decimals) : e.ToString("G4", CultureInfo.InvariantCulture);
        yield return Say("aperture.noMarkAppearsBelow", Energy(size.Threshold), Energy(size.ThresholdUncertainty), fit);
    }

    private static IEnumerable<string> Opening(OpeningFinding opening)
    {
        OpeningInput input = opening.Input;
        double distance = Math.Sqrt((input.OffsetU * input.OffsetU) + (input.OffsetV * input.OffsetV));
        yield return Say("aperture.openingDiameterMmThe", Words.Fixed(input.Diameter, 2), Words.Fixed(distance, 2), Words.Place(input.OffsetU), Words.Place(input.OffsetV), Words.Fixed(input.Uncertainty, 3));
        Table table = new(Get("aperture.powerThatPasses"), "%", Get("aperture.uncertainty"), Get("aperture.95Interval"), Get("aperture.atLeast"));
        Add(table, Get("aperture.now"), opening.Now);
        Add(table, Get("aperture.inTheCentre"), opening.Centred);
        yield return table.ToString();
        yield return Gain(opening);
        yield return Get("aperture.uncertaintyStandardUncertaintyAt");
    }

    private static string Gain(OpeningFinding opening) => opening.Gain < LeastGain
        ? Get("aperture.bringingTheBeamTo")
        : Say("aperture.bringingTheBeamTo2", Percent(opening.Gain), string.Join("; ", Steps(opening.Input)));

    // An offset that its uncertainty explains, or too small to see, asks for nothing.
    private static IEnumerable<string> Steps(OpeningInput input)
    {
        bool Matters(double offset) => Math.Abs(offset) > Math.Max(LeastOffset, DecisionRule.GuardFactor * input.Uncertainty);
        if (Matters(input.OffsetU))
            yield return input.OffsetU > 0
                ? Say("aperture.moveTheTargetS", Words.Fixed(input.OffsetU, 2))
                : Say("aperture.moveTheTargetS2", Words.Fixed(-input.OffsetU, 2));
        if (Matters(input.OffsetV))
            yield return input.OffsetV > 0
                ? Say("aperture.theBeamIsMm", Words.Fixed(input.OffsetV, 2))
                : Say("aperture.theBeamIsMm2", Words.Fixed(-input.OffsetV, 2));
        if (!Matters(input.OffsetU) && !Matters(input.OffsetV))
            yield return Get("aperture.neitherOffsetIsSignificant");
    }

    private static void Add(Table table, string name, TransmittedPower power) =>
        table.Add(name, Percent(power.Mean), Percent(power.Uncertainty), Say("range", Percent(power.Low), Percent(power.High)), Percent(power.AtLeast));

    // Never -0.00, whatever rounding leaves of no gain.
    private static string Percent(double part) => Words.Fixed(Math.Round(100 * part, 2) + 0.0, 2);
}
