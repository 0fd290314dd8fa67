using MathNet.Numerics.LinearAlgebra;

namespace MarkReader.Alignment.LineFitting;

/// <summary>A fitted line y = a + b·x with the covariance of (a, b).</summary>
public sealed class FittedLine
{
    private readonly double _centre;
    private readonly LinearFit _fit;

    internal FittedLine(double centre, LinearFit fit) => (_centre, _fit) = (centre, fit);

    /// <summary>a, the value at x = 0.</summary>
    public double Intercept => At(0).Value;

    /// <summary>b.</summary>
    public double Slope => _fit.Parameters[1];

    public double InterceptUncertainty => At(0).Uncertainty;

    public double SlopeUncertainty => Math.Sqrt(_fit.Covariance[1, 1]);

    /// <summary>cov(a, b).</summary>
    public double InterceptSlopeCovariance => _fit.Covariance[0, 1] - (_centre * _fit.Covariance[1, 1]);

    /// <summary>Sum of squared residuals; weighted when uncertainties were given.</summary>
    public double ChiSquare => _fit.ChiSquare;

    public int DegreesOfFreedom => _fit.DegreesOfFreedom;

    /// <summary>Observed minus fitted, in the order of the observations.</summary>
    public IReadOnlyList<double> Residuals => [.. _fit.Residuals];

    /// <summary>The line's value at <paramref name="x"/> and its standard uncertainty, with the covariance of a and b.</summary>
    public Prediction At(double x)
    {
        Vector<double> row = Vector<double>.Build.Dense([1, x - _centre]);
        return new(row * _fit.Parameters, Math.Sqrt(row * _fit.Covariance * row));
    }
}

/// <summary>A value and its standard uncertainty.</summary>
public readonly record struct Prediction(double Value, double Uncertainty);
