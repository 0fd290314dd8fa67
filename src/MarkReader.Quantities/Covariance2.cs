namespace MarkReader.Quantities;

/// <summary>The covariance matrix [[Uu, Uv], [Uv, Vv]] of a point with two components, in mm² for a point in the card frame.</summary>
/// <remarks>Symmetric and positive semidefinite within rounding; a class, so that no default claims zero error.</remarks>
public sealed record Covariance2
{
    /// <summary>χ² with 2 degrees of freedom at 95 %: 5.991465 (JCGM 102:2011, 6.5.2: kp = 2.4477 = √5.991465).</summary>
    public const double ChiSquare95 = 5.991464547107979;

    /// <exception cref="ArgumentOutOfRangeException">An element is not finite, or the matrix is not positive semidefinite.</exception>
    public Covariance2(double uu, double uv, double vv)
    {
        Uu = Finite.Require(uu, nameof(uu));
        Uv = Finite.Require(uv, nameof(uv));
        Vv = Finite.Require(vv, nameof(vv));
        if (uu < 0 || vv < 0 || (uv * uv) > (uu * vv * (1 + 1e-9)) + 1e-300)
            throw new ArgumentOutOfRangeException(nameof(uv), uv, "The matrix must be positive semidefinite.");
    }

    public double Uu { get; }

    public double Uv { get; }

    public double Vv { get; }

    public double Determinant => (Uu * Vv) - (Uv * Uv);

    /// <summary>A covariance with the same variance σ² on both axes and no correlation.</summary>
    public static Covariance2 Isotropic(double standardDeviation) => new(standardDeviation * standardDeviation, 0, standardDeviation * standardDeviation);

    /// <summary>Covariance d·dᵀ of an error that displaces the point by <paramref name="d"/> when it has the size of its standard uncertainty.</summary>
    public static Covariance2 Along(CardVector d) => new(d.U * d.U, d.U * d.V, d.V * d.V);

    /// <summary>The sum, for independent contributions.</summary>
    public static Covariance2 operator +(Covariance2 left, Covariance2 right) => new(left.Uu + right.Uu, left.Uv + right.Uv, left.Vv + right.Vv);

    /// <summary>The covariance scaled by a factor of variance (≥ 0).</summary>
    public static Covariance2 operator *(double factor, Covariance2 covariance) => new(factor * covariance.Uu, factor * covariance.Uv, factor * covariance.Vv);

    /// <summary>J·C·Jᵀ for the Jacobian J = [[j11, j12], [j21, j22]] (law of propagation, JCGM 102:2011, 6.2.1.3).</summary>
    public Covariance2 Transform(double j11, double j12, double j21, double j22)
    {
        double uu = (j11 * j11 * Uu) + (2 * j11 * j12 * Uv) + (j12 * j12 * Vv);
        double uv = (j11 * j21 * Uu) + (((j11 * j22) + (j12 * j21)) * Uv) + (j12 * j22 * Vv);
        double vv = (j21 * j21 * Uu) + (2 * j21 * j22 * Uv) + (j22 * j22 * Vv);
        return new(uu, uv, vv);
    }

    /// <summary>The squared Mahalanobis distance dᵀ·C⁻¹·d of a displacement; +∞ when the matrix is singular and d is not zero.</summary>
    public double MahalanobisSquared(CardVector d)
    {
        if (d.U == 0 && d.V == 0)
            return 0;
        return Determinant <= 0
            ? double.PositiveInfinity
            : ((Vv * d.U * d.U) - (2 * Uv * d.U * d.V) + (Uu * d.V * d.V)) / Determinant;
    }

    /// <summary>The region that holds 95 % of a bivariate normal distribution with this covariance.</summary>
    public Ellipse Ellipse95() => Ellipse(Math.Sqrt(ChiSquare95));

    /// <summary>The ellipse at <paramref name="coverageFactor"/> standard deviations along the principal axes.</summary>
    public Ellipse Ellipse(double coverageFactor)
    {
        double mean = (Uu + Vv) / 2;
        double half = Math.Sqrt((((Uu - Vv) / 2) * ((Uu - Vv) / 2)) + (Uv * Uv));
        double major = Math.Sqrt(mean + half);
        double minor = Math.Sqrt(Math.Max(0, mean - half));
        return new(coverageFactor * major, coverageFactor * minor, Angle.FromRadians(0.5 * Math.Atan2(2 * Uv, Uu - Vv)));
    }
}
