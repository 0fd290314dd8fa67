using MarkReader.Quantities;

namespace MarkReader.Alignment.Aiming;

/// <summary>The angle between the beam and the rail in beam coordinates, as its tangent in units of 1/1000 (mrad).</summary>
/// <param name="U">Component in the plane of u: the mark's walk across the beam per metre of path, in mm.</param>
/// <param name="V">Component along v.</param>
/// <param name="Covariance">Covariance of (U, V), mrad².</param>
public sealed record Slope(double U, double V, Covariance2 Covariance)
{
    /// <summary>Size of the slope, mrad.</summary>
    public double Magnitude => Math.Sqrt((U * U) + (V * V));
}
