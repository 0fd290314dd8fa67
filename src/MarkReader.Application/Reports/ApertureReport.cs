using MarkReader.Alignment.Apertures;
using MarkReader.Application.Apertures;

namespace MarkReader.Application.Reports;

/// <summary>The JSON of an aperture, mm; uncertainties are standard uncertainties.</summary>
/// <param name="Aperture">Null when only the beam's size was asked for.</param>
public sealed record ApertureReport(BeamReport Beam, OpeningReport? Aperture, IReadOnlyList<WarningReport> Warnings)
{
    public static ApertureReport From(ApertureFinding finding) => new(
        BeamReport.From(finding),
        finding.Opening is { } opening ? OpeningReport.From(opening) : null,
        WarningReport.From(finding.Size?.Warnings ?? []));
}

/// <summary>The beam.</summary>
/// <param name="Diameter">1/e² diameter.</param>
/// <param name="Marks">How it follows from marks; null when it was stated.</param>
public sealed record BeamReport(double Diameter, double Uncertainty, BeamMarksReport? Marks)
{
    internal static BeamReport From(ApertureFinding finding) => new(
        2 * finding.BeamRadius.Value.Millimetres,
        2 * finding.BeamRadius.Uncertainty.Millimetres,
        finding.Size is { } size
            ? new(size.Threshold, size.ThresholdUncertainty, size.Fit.ChiSquare, size.Fit.DegreesOfFreedom, size.Fit.Probability)
            : null);
}

/// <summary>The beam's size from marks.</summary>
/// <param name="Threshold">Energy below which no mark appears, in the unit of the energies.</param>
/// <param name="Probability">Of a χ² at least as large when the marks follow the law; null for two energies' worth of marks without a degree of freedom.</param>
public sealed record BeamMarksReport(double Threshold, double ThresholdUncertainty, double ChiSquare, int DegreesOfFreedom, double? Probability);

/// <summary>An opening and the power that passes it.</summary>
/// <param name="OffsetUncertainty">Of each component.</param>
/// <param name="Centred">The power after the beam was moved by the measured offset.</param>
/// <param name="Gain">What that gains, as a part of the beam's power.</param>
public sealed record OpeningReport(
    double Diameter, double OffsetU, double OffsetV, double OffsetUncertainty, PowerReport Power, PowerReport Centred, double Gain)
{
    internal static OpeningReport From(OpeningFinding opening) => new(
        opening.Input.Diameter,
        opening.Input.OffsetU,
        opening.Input.OffsetV,
        opening.Input.Uncertainty,
        PowerReport.From(opening.Now),
        PowerReport.From(opening.Centred),
        opening.Gain);
}

/// <summary>A transmitted part of the power, 0 to 1.</summary>
/// <param name="Mean">The estimate: the mean over the distributions of offset and beam size (JCGM 101).</param>
/// <param name="AtEstimate">For the stated offset and beam size as if they were exact.</param>
/// <param name="Interval">Ends of the 95 % interval.</param>
/// <param name="AtLeast">Exceeded with a probability of 95 %.</param>
public sealed record PowerReport(double Mean, double Uncertainty, double AtEstimate, double[] Interval, double AtLeast)
{
    internal static PowerReport From(TransmittedPower power) => new(power.Mean, power.Uncertainty, power.AtEstimate, [power.Low, power.High], power.AtLeast);
}
