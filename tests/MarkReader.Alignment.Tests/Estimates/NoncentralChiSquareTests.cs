using CsCheck;
using MarkReader.Alignment.Estimates;
using MathNet.Numerics;
using MathNet.Numerics.Distributions;

namespace MarkReader.Alignment.Tests.Estimates;

public sealed class NoncentralChiSquareTests
{
    /// <summary>F(x; 2, λ) = Σ Poisson(j; λ/2)·F(x; 2 + 2j): M. Abramowitz and I. A. Stegun, Handbook of Mathematical Functions, 26.4.25.</summary>
    [Fact]
    public void Distribution_function_is_the_Poisson_weighted_sum_of_central_ones() =>
        Gen.Select(Gen.Double[0, 500], Gen.Double[0, 500]).Sample((x, lambda) =>
            Math.Abs(NoncentralChiSquare.Below(x, lambda) - PoissonSum(x, lambda)) < 1e-9);

    [Theory]
    [InlineData(0, 0, 0)]
    [InlineData(5.991464547107979, 0, 0.95)]
    [InlineData(0, 7, 0)]
    [InlineData(1e6, 1, 1)]
    [InlineData(1, 1e6, 0)]
    public void Ends_are_exact(double x, double lambda, double expected) => Assert.Equal(expected, NoncentralChiSquare.Below(x, lambda), 1e-14);

    /// <summary>
    /// The part of a Gaussian beam (radius 1) through a round opening (radius a, offset d) is F(4a²; 2, 4d²). Values to ten digits from four other ways: SciPy's ncx2, integrals
    /// with the Bessel and the error function, a series of gamma functions.
    /// </summary>
    [Theory]
    [InlineData(1, 0.1, 0.8592514251)]
    [InlineData(1, 0.5, 0.7309879400)]
    [InlineData(1, 1, 0.3964990394)]
    [InlineData(1.5, 0.75, 0.8961730900)]
    [InlineData(1.5, 1.5, 0.4325202377)]
    [InlineData(2, 1, 0.9658651551)]
    [InlineData(2, 2, 0.4497279363)]
    [InlineData(0.5, 0.5, 0.2671201962)]
    public void Distribution_function_has_the_values_of_other_programs(double a, double d, double expected) =>
        Assert.Equal(expected, NoncentralChiSquare.Below(4 * a * a, 4 * d * d), 5e-11);

    /// <summary>Where x and λ come together, and far out, the library's function is checked against the integral by chords.</summary>
    [Fact]
    public void Distribution_function_is_the_integral_over_a_disc_also_where_x_and_lambda_are_close() =>
        Gen.Select(Gen.Double[-1, 2.5], Gen.Double[-16, 1.3], Gen.Bool, Gen.Int[0, 20]).Sample((size, log, less, same) =>
        {
            double centre = Math.Pow(10, size);
            double root = same == 0 ? centre : Math.Max(0, centre + (Math.Pow(10, log) * (less ? -1 : 1)));
            double disc = BivariateNormal.OverDisc(new(centre, 0, 1, 1), root);
            return Math.Abs(NoncentralChiSquare.Below(root * root, centre * centre) - disc) < 1e-9;
        }, iter: 2000);

    /// <summary>A circle of very large radius is a straight edge.</summary>
    [Fact]
    public void Very_large_arguments_give_the_normal_distribution() =>
        Assert.Equal(Normal.CDF(0, 1, 1.2), NoncentralChiSquare.Below(Square(1e6 + 1.2), Square(1e6)), 1e-6);

    private static double PoissonSum(double x, double lambda)
    {
        double sum = 0;
        for (int j = 0; j < 1500; j++)
        {
            double weight = lambda == 0 ? (j == 0 ? 1 : 0) : Math.Exp((j * Math.Log(lambda / 2)) - (lambda / 2) - SpecialFunctions.FactorialLn(j));
            if (weight > 0)
                sum += weight * SpecialFunctions.GammaLowerRegularized(1 + j, x / 2);
        }

        return sum;
    }

    private static double Square(double x) => x * x;
}
