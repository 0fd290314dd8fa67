using MathNet.Numerics.LinearAlgebra;

namespace MarkReader.Cameras.Calibration;

/// <summary>One fit.</summary>
/// <param name="Covariance">Of the shared parameters, in their order; zero where a parameter was not free.</param>
/// <param name="Residuals">View by view, px.</param>
/// <param name="Weights">View by view, 1/px²; 0 for a sighting that was left out.</param>
internal sealed record FittedCalibration(
    CalibrationState State,
    CameraTerms Terms,
    Matrix<double> Covariance,
    IReadOnlyList<double[]> Residuals,
    IReadOnlyList<double[]> Weights);
