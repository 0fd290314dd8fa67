using MarkReader.Alignment.Aiming;
using MarkReader.Alignment.Estimates;
using MarkReader.Alignment.LineFitting;
using MarkReader.Alignment.Texts;
using MarkReader.Quantities;
using MathNet.Numerics;
using static MarkReader.Quantities.Texts<MarkReader.Alignment.Texts.AdviserTexts>;

namespace MarkReader.Alignment.Apertures;

/// <summary>A mark burnt by a pulse of known relative energy.</summary>
/// <param name="Energy">Energy, or power times time at a fixed setting; in any unit, the same for all marks.</param>
/// <param name="Diameter">The mark's diameter with its standard uncertainty.</param>
public sealed record EnergyMark(double Energy, MeasuredLength Diameter);

/// <summary>The beam's size from marks at several energies.</summary>
/// <param name="Radius">1/e² intensity radius w at the tape.</param>
/// <param name="Threshold">Energy below which no mark appears, in the unit of the marks.</param>
/// <param name="ThresholdUncertainty">Its standard uncertainty.</param>
/// <param name="Fit">How well D² rises in proportion to ln E.</param>
/// <param name="Warnings">What the user should know.</param>
public sealed record BeamSize(MeasuredLength Radius, double Threshold, double ThresholdUncertainty, FitQuality Fit, IReadOnlyList<Warning> Warnings);

/// <summary>Beam radius and threshold from D² = 2w²·ln(E/Eth).</summary>
/// <remarks>
/// J. M. Liu, Opt. Lett. 7 (1982) 196, doi:10.1364/OL.7.000196. D² against ln E is a line of slope 2w² that crosses zero at ln Eth; fitted by
/// weighted least squares with u(D²) = 2D·u(D), D being the fitted diameter, and u²(D) taken off D², whose expectation it raises.
/// It holds for a Gaussian beam and a fixed threshold; long burns widen by conduction of heat, which the fit's χ² may or may not show.
/// </remarks>
public static class BeamSizeFit
{
    private const int Rounds = 4;
    private const int MostMarks = 1000;
    private const double LeastSlopeOverUncertainty = 3;

    public static Outcome<BeamSize> Solve(IReadOnlyList<EnergyMark> marks)
    {
        if (Check(marks) is { } wrong)
            return wrong;
        double[] x = [.. marks.Select(m => Math.Log(m.Energy))];
        double[] u = [.. marks.Select(m => m.Diameter.Uncertainty.Millimetres)];
        double[] squared = [.. marks.Select((m, i) => Square(m.Diameter.Value.Millimetres) - Square(u[i]))];
        double[] diameter = [.. marks.Select(m => m.Diameter.Value.Millimetres)];
        FittedLine line = null!;
        for (int round = 0; round < Rounds; round++)
        {
            line = LineFit.Weighted(x, squared, [.. diameter.Select((d, i) => 2 * u[i] * Math.Sqrt(Square(d) + (Square(u[i]) / 2)))]);
            diameter = [.. x.Select((at, i) => Math.Sqrt(Math.Max(line.At(at).Value, Square(u[i]))))];
        }

        if (!(line.Slope > LeastSlopeOverUncertainty * line.SlopeUncertainty))
        {
            return new Failure(
                ApertureFailures.DiametersDoNotGrow, AlignmentTexts.Get("beamSize.marksDiametersDoNotClearly"), AlignmentTexts.Get("beamSize.useEnergiesThatDifferBy"));
        }

        return Result(line);
    }

    private static BeamSize Result(FittedLine line)
    {
        double radius = Math.Sqrt(line.Slope / 2), radiusUncertainty = line.SlopeUncertainty / (4 * radius);
        double logThreshold = -line.Intercept / line.Slope;
        // At the threshold the line is zero: u(ln Eth) = u(line there)/slope, which holds the covariance of both.
        double threshold = Math.Exp(logThreshold), thresholdUncertainty = threshold * line.At(logThreshold).Uncertainty / line.Slope;
        FitQuality fit = new(
            line.ChiSquare,
            line.DegreesOfFreedom,
            line.DegreesOfFreedom == 0 ? null : SpecialFunctions.GammaUpperRegularized(line.DegreesOfFreedom / 2.0, line.ChiSquare / 2));
        return new(
            MeasuredLength.FromMillimetres(radius, radiusUncertainty),
            threshold,
            thresholdUncertainty,
            fit,
            fit.Probability < AimSolver.ImprobableBelow
                ? [new("diametersOffLine", Get("warning.diametersOffLine"))]
                : []);
    }

    private static Failure? Check(IReadOnlyList<EnergyMark> marks)
    {
        string hint = AlignmentTexts.Get("beamSize.giveTwoOrMoreMarks");
        if (marks.Count > MostMarks || marks.Select(m => m.Energy).Distinct().Count() < 2)
            return new(ApertureFailures.TooFewEnergies, AlignmentTexts.Word("beamSize.marksAtEnergiesWereGiven", marks.Count, marks.Select(m => m.Energy).Distinct().Count()), hint);
        foreach (EnergyMark mark in marks)
        {
            double d = mark.Diameter.Value.Millimetres;
            if ((InputChecks.Between(mark.Energy, (1e-9, 1e9), ApertureFailures.EnergyInvalid, AlignmentTexts.Get("beamSize.pulseEnergy"), hint)
                ?? InputChecks.Lengths(d, (0.01, 100), ApertureFailures.DiameterInvalid, AlignmentTexts.Get("beamSize.markDiameter"), hint)
                ?? InputChecks.Lengths(mark.Diameter.Uncertainty.Millimetres, (1e-6, d), ApertureFailures.DiameterInvalid, AlignmentTexts.Get("beamSize.standardUncertaintyDiameter"), hint)) is { } wrong)
                return wrong;
        }

        return null;
    }

    private static double Square(double x) => x * x;
}
