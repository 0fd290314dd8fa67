using MarkReader.Cameras.Boards;
using MarkReader.Cameras.Models;
using MathNet.Numerics.LinearAlgebra;

namespace MarkReader.Cameras.Calibration;

/// <summary>A calibrated camera with everything that tells how far to trust it.</summary>
/// <param name="Covariance">Of <see cref="Values"/>; zero for terms that are not in the model.</param>
/// <param name="Terms">What was left free.</param>
/// <param name="Evidence">What the photos said about each term.</param>
/// <param name="ResidualPx">Root mean square of all used residuals.</param>
public sealed record CalibratedCamera(
    CameraModel Camera,
    BoardShape Board,
    Matrix<double> Covariance,
    CameraTerms Terms,
    IReadOnlyList<TermEvidence> Evidence,
    IReadOnlyList<CalibratedView> Views,
    IReadOnlyList<DroppedView> Dropped,
    double ResidualPx)
{
    /// <summary>The order of values and covariance; focal lengths and principal point in px, bend and spread of the ink in mm, the rest without unit.</summary>
    public static IReadOnlyList<string> Names { get; } = ["fx", "fy", "cx", "cy", "k1", "k2", "k3", "p1", "p2", "stretch", "bendUu", "bendUv", "bendVv", "spread"];

    public IReadOnlyList<double> Values => [.. new Globals(Camera, Board).Values().Take(Names.Count)];

    /// <summary>Standard uncertainties of <see cref="Values"/>.</summary>
    public IReadOnlyList<double> StandardUncertainties => [.. Covariance.Diagonal().Take(Names.Count).Select(v => Math.Sqrt(Math.Max(0, v)))];
}
