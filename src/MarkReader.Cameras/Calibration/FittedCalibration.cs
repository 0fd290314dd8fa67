using MarkReader.Cameras.Boards;
using MathNet.Numerics.LinearAlgebra;

namespace MarkReader.Cameras.Calibration;

/// <summary>One fit.</summary>
/// <param name="Residuals">View by view, px.</param>
/// <param name="Weights">View by view, 1/px²; 0 for a sighting that was left out.</param>
/// <param name="Covariances">Worked out when they are asked for, since the jackknife takes as long as some steps of the fit.</param>
/// <param name="Agreement">For each view the probability that one which agrees with the others in some elements of the shared parameters shows as much; by elements with standard deviations single views may differ.</param>
internal sealed record FittedCalibration(
    CalibrationState State,
    CameraTerms Terms,
    IReadOnlyList<double[]> Residuals,
    IReadOnlyList<double[]> Weights,
    Lazy<FitCovariances> Covariances,
    Func<IReadOnlyList<int>, IReadOnlyList<(int Element, double Sigma)>, IReadOnlyList<double>> Agreement)
{
    /// <summary>Of the shared parameters, in their order; zero where a parameter was not free.</summary>
    public Matrix<double> Covariance => Covariances.Value.Shared;

    public JointCovariance Joint => Covariances.Value.Joint;

    /// <summary>Root mean square of all used residuals.</summary>
    public double ResidualPx => Rms([.. Residuals.SelectMany((r, i) => r.Where((_, k) => Weights[i][k] > 0))]);

    /// <summary>How each view took part.</summary>
    public CalibratedView[] ViewsOf(IReadOnlyList<BoardView> views) => [.. views.Select((v, i) =>
    {
        double[] used = [.. Residuals[i].Where((_, k) => Weights[i][k] > 0)];
        return new CalibratedView(v.Name, State.Poses[i], v.Sightings.Count, used.Length, Rms(used));
    })];

    /// <summary>Root mean square; not a number of nothing.</summary>
    internal static double Rms(IReadOnlyCollection<double> values) => values.Count == 0 ? double.NaN : Math.Sqrt(values.Average(v => v * v));
}

/// <summary>The covariances of one fit.</summary>
internal sealed record FitCovariances(Matrix<double> Shared, JointCovariance Joint);

/// <summary>Covariance of all that the views share, faults of printed edges among them.</summary>
/// <param name="Free">The free parameters, each by the elements that it moves.</param>
/// <param name="Groups">The printed edges whose faults follow them.</param>
/// <param name="FaultSpread">Standard deviation of the faults, mm; 0 when the sightings show none.</param>
internal sealed record JointCovariance(IReadOnlyList<int[]> Free, IReadOnlyList<int> Groups, Matrix<double> Matrix, double FaultSpread);
