using MarkReader.Application.Aiming;
using MarkReader.Metrology.MonteCarlo;
using MarkReader.Quantities;

namespace MarkReader.Application.Propagating;

/// <summary>An aim point with its linear uncertainty (JCGM 100) and with the one from random draws (JCGM 101), side by side.</summary>
/// <param name="Finding">The aim point and its linear covariance.</param>
/// <param name="Plan">How many draws, from which seed.</param>
/// <param name="Drawn">Mean and covariance of the draws.</param>
/// <param name="Covered">Part of the draws inside the linear 95 % ellipse.</param>
/// <param name="EllipseFactor">Factor of the ellipse of the draws' own mean and covariance that holds 95 % of them; 2.448 for a normal distribution (JCGM 102:2011, 7.7.2).</param>
/// <param name="U">The comparison along u.</param>
/// <param name="V">The comparison along v.</param>
public sealed record AimPropagation(
    AimFinding Finding, Plan Plan, MeasuredPoint Drawn, double Covered, double EllipseFactor, IntervalComparison U, IntervalComparison V)
{
    /// <summary>How far the covered part may be from 95 % where both results are called equal.</summary>
    public const double CoverageTolerance = 0.01;

    /// <summary>Whether the linear result stands: both intervals agree within their numerical tolerance (JCGM 101:2008, 8.1), and the ellipse holds 94 % to 96 % of the draws.</summary>
    public bool Agrees => U.Agrees && V.Agrees && Math.Abs(Covered - 0.95) <= CoverageTolerance;
}

/// <summary>The linear 95 % interval of one component against the probabilistically symmetric one of the draws (JCGM 101:2008, 8.1), mm.</summary>
/// <param name="Linear">Estimate ± 1.96 standard uncertainties.</param>
/// <param name="Drawn">From the draws.</param>
/// <param name="Tolerance">Half a unit in the first significant digit of the standard uncertainty (JCGM 101, 7.9.2).</param>
public sealed record IntervalComparison(Interval Linear, Interval Drawn, double Tolerance)
{
    /// <summary>The larger of the differences at both ends.</summary>
    public double Difference => Math.Max(Math.Abs(Linear.Low - Drawn.Low), Math.Abs(Linear.High - Drawn.High));

    public bool Agrees => Difference <= Tolerance;

    internal static IntervalComparison Of(double estimate, double uncertainty, Interval drawn) => new(
        new(estimate - (Normal95.Factor * uncertainty), estimate + (Normal95.Factor * uncertainty)),
        drawn,
        0.5 * Math.Pow(10, Math.Floor(Math.Log10(uncertainty))));
}
