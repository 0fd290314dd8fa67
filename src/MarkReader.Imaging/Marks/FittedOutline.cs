using MarkReader.Quantities;

namespace MarkReader.Imaging.Marks;

/// <summary>An ellipse fitted to a mark's outline.</summary>
/// <param name="Covariance">Of the centre, from noise and roughness, mm².</param>
/// <param name="LevelDoubt">Of the centre, from light outside that differs from side to side, mm².</param>
/// <param name="Radius">Of the circle of equal area, mm.</param>
/// <param name="Sigma">Standard deviation of the edge's blur, mm.</param>
/// <param name="Seen">Part of the directions that show the edge and fit, 0 to 1.</param>
/// <param name="Roughness">Residual over the radius, without what noise explains.</param>
internal sealed record FittedOutline(
    CardPoint Centre, Covariance2 Covariance, Covariance2 LevelDoubt, double Radius, double E1, double E2, double Sigma, double Seen, double Roughness)
{
    public double AxisRatio
    {
        get
        {
            double e = Math.Sqrt((E1 * E1) + (E2 * E2));
            return Math.Sqrt((1 - e) / (1 + e));
        }
    }

    /// <summary>Distance of the outline from the centre in a direction (from u towards v, rad), mm.</summary>
    public double RadiusAt(double angle)
    {
        (double s, double c) = Math.SinCos(angle);
        double q = ((1 + E1) * c * c) + (2 * E2 * s * c) + ((1 - E1) * s * s);
        return Radius * Math.Sqrt(Math.Sqrt(1 - (E1 * E1) - (E2 * E2)) / q);
    }
}

/// <summary>An edge seen in one direction from the centre: distance (mm) with variance (mm²), blur (mm), step of light, and the light outside.</summary>
internal sealed record EdgePoint(double Angle, double Radius, double Variance, double Sigma, double Step, double Outside, int Cluster);
