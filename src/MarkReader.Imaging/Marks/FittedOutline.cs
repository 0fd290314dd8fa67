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
    CardPoint Centre, Covariance2 Covariance, Covariance2 LevelDoubt, double Radius, EllipticShape Shape, double Sigma, double Seen, double Roughness)
{
    /// <summary>A disc, before anything is fitted.</summary>
    public static FittedOutline Start(Disc disc, double sigma) => new(disc.Centre, Covariance2.Isotropic(1), Covariance2.Isotropic(1), disc.Radius, disc.Shape, sigma, 0, 0);

    /// <summary>The point at a distance (mm) from the centre in a direction (from u towards v, rad).</summary>
    public CardPoint At(double angle, double distance) => new(Centre.U + (distance * Math.Cos(angle)), Centre.V + (distance * Math.Sin(angle)));

    /// <summary>Distance of the outline from the centre in a direction, mm.</summary>
    public double RadiusAt(double angle) => Radius * Shape.At(angle);

    /// <summary>How far outside the outline a point is, mm; negative inside.</summary>
    public double Clearance(CardPoint p)
    {
        CardVector d = p - Centre;
        return d.Magnitude - RadiusAt(Math.Atan2(d.V, d.U));
    }
}

/// <summary>An edge seen in one direction from a mark's centre: distance (mm) with variance (mm²), blur (mm), step of light, and the light outside.</summary>
/// <param name="Mark">Which of the marks fitted together.</param>
internal sealed record EdgePoint(int Mark, double Angle, double Radius, double Variance, double Sigma, double Step, double Outside);
