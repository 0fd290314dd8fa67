using MathNet.Numerics;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Integration;

namespace MarkReader.Alignment.Advice;

/// <summary>The probability that a bivariate normal quantity lies in a disc about the origin.</summary>
/// <remarks>Integral over one principal axis (Gauss–Legendre) of the other's closed form; error below 1e-6.</remarks>
internal static class NormalInDisc
{
    private const double Reach = 7;

    private static readonly GaussLegendreRule Rule = new(-1, 1, 48);

    public static double Probability((double U, double V) mean, (double Uu, double Uv, double Vv) covariance, double radius)
    {
        if (!(radius > 0))
            return 0;
        // Principal axes.
        double angle = 0.5 * Math.Atan2(2 * covariance.Uv, covariance.Uu - covariance.Vv);
        (double sin, double cos) = Math.SinCos(angle);
        double half = Math.Sqrt(Math.Pow((covariance.Uu - covariance.Vv) / 2, 2) + (covariance.Uv * covariance.Uv)), middle = (covariance.Uu + covariance.Vv) / 2;
        double major = Math.Max(Math.Sqrt(middle + half), 1e-9 * radius), minor = Math.Max(Math.Sqrt(Math.Max(0, middle - half)), 1e-9 * radius);
        double a = (cos * mean.U) + (sin * mean.V), b = (cos * mean.V) - (sin * mean.U);

        // Integrated along the narrow axis, whose density the nodes then resolve; y = r·sin φ keeps the disc's edge smooth.
        double from = Math.Max(-radius, b - (Reach * minor)), to = Math.Min(radius, b + (Reach * minor));
        if (from >= to)
            return 0;
        (from, to) = (Math.Asin(from / radius), Math.Asin(to / radius));
        double sum = 0, centre = (from + to) / 2, width = (to - from) / 2;
        for (int i = 0; i < Rule.Order; i++)
        {
            (double y, double x) = Math.SinCos(centre + (width * Rule.GetAbscissa(i)));
            sum += Rule.GetWeight(i) * width * radius * x * Normal.PDF(b, minor, radius * y) * Between(((-radius * x) - a) / major, ((radius * x) - a) / major);
        }

        return Math.Clamp(sum, 0, 1);
    }

    private static double Between(double from, double to) =>
        0.5 * (SpecialFunctions.Erfc(from / Constants.Sqrt2) - SpecialFunctions.Erfc(to / Constants.Sqrt2));
}
