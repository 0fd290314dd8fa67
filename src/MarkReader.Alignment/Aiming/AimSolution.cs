using MarkReader.Alignment.Legs;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Aiming;

/// <summary>What the marks of a leg say.</summary>
/// <param name="Aim">The aim point in the card frame, where every mark will fall once the slope is zero.</param>
/// <param name="Budget">What each source contributes to the aim point's covariance; they add up to it.</param>
/// <param name="Slope">The angle between the beam and the rail.</param>
/// <param name="Ratio">|aim − near| / |far − near|, from the fitted marks at the shortest and the longest path.</param>
/// <param name="Fit">How well the marks lie on one line.</param>
/// <param name="Residuals">Observed minus fitted, in the order of the observations.</param>
/// <param name="Warnings">What the user should know.</param>
public sealed record AimSolution(
    MeasuredPoint Aim,
    IReadOnlyList<UncertaintyComponent> Budget,
    Slope Slope,
    double Ratio,
    FitQuality Fit,
    IReadOnlyList<AimResidual> Residuals,
    IReadOnlyList<Warning> Warnings);

/// <summary>The test of a fit whose observations have known uncertainties.</summary>
/// <param name="ChiSquare">Sum of squared residuals weighted by the inverse of their covariance.</param>
/// <param name="DegreesOfFreedom">Two for every mark, less four; zero for two marks.</param>
/// <param name="Probability">Of a χ² at least as large, when model and uncertainties are right; null without degrees of freedom.</param>
public sealed record FitQuality(double ChiSquare, int DegreesOfFreedom, double? Probability);

/// <summary>A mark's distance from the fitted line, on the tape, at the station's path length as stated (mm).</summary>
public sealed record AimResidual(Observation Observation, CardVector Residual);
