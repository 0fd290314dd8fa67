using MarkReader.Quantities;

namespace MarkReader.Metrology.MonteCarlo;

/// <summary>The distributions of JCGM 101:2008, Table 1, that the project uses.</summary>
public static class Inputs
{
    /// <summary>Normal, from a best estimate and a standard uncertainty (JCGM 101, 6.4.7).</summary>
    public static IInput Normal(double mean, double standardUncertainty) =>
        new Single(random => mean + (standardUncertainty * Gauss(random)));

    /// <summary>Rectangular, from a best estimate and a half-width (JCGM 101, 6.4.2); u = half-width / √3.</summary>
    public static IInput Rectangular(double mean, double halfWidth) =>
        new Single(random => mean + (halfWidth * ((2 * random.NextDouble()) - 1)));

    /// <summary>A measured point: bivariate normal with its covariance (JCGM 101, 6.4.8); gives u, then v.</summary>
    public static IInput Point(MeasuredPoint point) => new Bivariate(point);

    private static double Gauss(Random random) => MathNet.Numerics.Distributions.Normal.Sample(random, 0, 1);

    private sealed class Single(Func<Random, double> draw) : IInput
    {
        public int Dimension => 1;

        public void Draw(Random random, Span<double> values) => values[0] = draw(random);
    }

    private sealed class Bivariate(MeasuredPoint point) : IInput
    {
        private readonly double _root = Math.Sqrt(point.Covariance.Uu);
        private readonly double _lean = point.Covariance.Uu > 0 ? point.Covariance.Uv / Math.Sqrt(point.Covariance.Uu) : 0;

        public int Dimension => 2;

        public void Draw(Random random, Span<double> values)
        {
            double first = Gauss(random);
            values[0] = point.Point.U + (_root * first);
            values[1] = point.Point.V + (_lean * first) + (Math.Sqrt(Math.Max(0, point.Covariance.Vv - (_lean * _lean))) * Gauss(random));
        }
    }
}
