using MarkReader.Application.Propagating;
using MarkReader.Metrology.MonteCarlo;
using MarkReader.Quantities;

namespace MarkReader.Application.Reports;

/// <summary>The JSON of a Monte Carlo check: both results, how they differ, and whether they agree (JCGM 101:2008, 8.1).</summary>
/// <param name="Linear">By the law of propagation (JCGM 100).</param>
/// <param name="MonteCarlo">From the draws (JCGM 101).</param>
/// <param name="Covered">Part of the draws inside the linear 95 % ellipse.</param>
/// <param name="EllipseFactor">Factor of the draws' own ellipse that holds 95 % of them; 2.448 for a normal distribution.</param>
/// <param name="Tolerance">Numerical tolerance of the ends of the 95 % intervals, mm.</param>
/// <param name="Difference">The larger difference of the ends, mm.</param>
public sealed record PropagationReport(
    int Trials, int Seed, PropagatedReport Linear, PropagatedReport MonteCarlo, double Covered, double EllipseFactor, ComponentPair Tolerance, ComponentPair Difference, bool Agrees)
{
    public static PropagationReport From(AimPropagation p) => new(
        p.Plan.Trials,
        p.Plan.Seed,
        PropagatedReport.From(p.Finding.Solution.Aim, p.U.Linear, p.V.Linear),
        PropagatedReport.From(p.Drawn, p.U.Drawn, p.V.Drawn),
        p.Covered,
        p.EllipseFactor,
        new(p.U.Tolerance, p.V.Tolerance),
        new(p.U.Difference, p.V.Difference),
        p.Agrees);
}

/// <summary>An aim point and its uncertainty, mm; intervals hold 95 % each.</summary>
public sealed record PropagatedReport(
    double U, double V, double[][] Covariance, double StandardUncertaintyU, double StandardUncertaintyV, double Correlation, double[] IntervalU, double[] IntervalV)
{
    internal static PropagatedReport From(MeasuredPoint aim, Interval u, Interval v)
    {
        Covariance2 c = aim.Covariance;
        double root = Math.Sqrt(c.Uu * c.Vv);
        return new(
            aim.Point.U, aim.Point.V, MarkReport.Matrix(c), Math.Sqrt(c.Uu), Math.Sqrt(c.Vv), root > 0 ? c.Uv / root : 0, [u.Low, u.High], [v.Low, v.High]);
    }
}

/// <summary>One number along u and one along v.</summary>
public sealed record ComponentPair(double U, double V);
