using MarkReader.Quantities;

namespace MarkReader.Alignment.Tests.Estimates;

/// <summary>
/// JCGM 100:2008, H.2, approach 1: resistance R = (V/I)·cos φ and reactance X = (V/I)·sin φ from correlated means of V, I and φ. Two outputs of
/// correlated inputs are propagated as everywhere here, by <see cref="Covariance2.Transform"/>: (V, I) to Z, then (Z, φ) to (R, X).
/// </summary>
public sealed class GumImpedanceTests
{
    private static readonly double[] s_voltage = [5.007, 4.994, 5.005, 4.990, 4.999];
    private static readonly double[] s_current = [0.019663, 0.019639, 0.019640, 0.019685, 0.019678];
    private static readonly double[] s_phase = [1.0456, 1.0438, 1.0468, 1.0428, 1.0433];

    [Fact]
    public void Resistance_and_reactance_have_the_published_uncertainties_and_correlation()
    {
        (double v, double i, double phi) = (s_voltage.Average(), s_current.Average(), s_phase.Average());
        double z = v / i, byV = 1 / i, byI = -v / (i * i);
        Covariance2 current = new(Mean(s_voltage, s_voltage), Mean(s_voltage, s_current), Mean(s_current, s_current));
        double zz = current.Transform(byV, byI, 0, 1).Uu;
        Covariance2 polar = new(zz, (byV * Mean(s_voltage, s_phase)) + (byI * Mean(s_current, s_phase)), Mean(s_phase, s_phase));
        (double sin, double cos) = Math.SinCos(phi);
        Covariance2 c = polar.Transform(cos, -z * sin, sin, z * cos);

        Assert.Equal(127.732, z * cos, 0.0005);
        Assert.Equal(219.847, z * sin, 0.0006);
        Assert.Equal(254.260, z, 0.0005);
        Assert.Equal(0.071071, Math.Sqrt(c.Uu), 5e-7);
        Assert.Equal(0.295582, Math.Sqrt(c.Vv), 5e-7);
        Assert.Equal(0.236336, Math.Sqrt(zz), 5e-7);
        Assert.Equal(-0.588430, Correlation(c), 5e-7);
        Assert.Equal(-0.485259, Correlation(polar.Transform(cos, -z * sin, 1, 0)), 5e-7);
        Assert.Equal(0.992512, Correlation(polar.Transform(sin, z * cos, 1, 0)), 5e-7);
    }

    private static double Correlation(Covariance2 c) => c.Uv / Math.Sqrt(c.Uu * c.Vv);

    // Covariance of two means (JCGM 100:2008, 5.2.3).
    private static double Mean(double[] a, double[] b) =>
        a.Zip(b).Sum(p => (p.First - a.Average()) * (p.Second - b.Average())) / (a.Length * (a.Length - 1));
}
