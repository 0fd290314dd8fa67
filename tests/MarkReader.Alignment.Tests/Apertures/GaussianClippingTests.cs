using CsCheck;
using MarkReader.Alignment.Apertures;

namespace MarkReader.Alignment.Tests.Apertures;

/// <summary>Published and recomputed values for a Gaussian beam at a round aperture; the decentred ones agree four ways (noncentral χ², Bessel and error-function integrals, series).</summary>
public sealed class GaussianClippingTests
{
    [Theory]
    [InlineData(0.5, 0.393469)]
    [InlineData(0.75, 0.675348)]
    [InlineData(1, 0.864665)]
    [InlineData(1.25, 0.956063)]
    [InlineData(1.5, 0.988891)]
    [InlineData(Math.PI / 2, 0.992808)]
    [InlineData(2, 0.999665)]
    [InlineData(1.517427, 0.99)]
    [InlineData(1.858461, 0.999)]
    [InlineData(1.0730, 0.90)]
    [InlineData(1.2239, 0.95)]
    public void Centred_beam(double aperture, double transmitted) => Assert.Equal(transmitted, GaussianClipping.Transmitted(aperture, 1, 0), 2e-5);

    [Theory]
    [InlineData(1, 1, 0, 0.864664717, 5e-10)]
    [InlineData(7.5, 4, 2, 0.993781834, 5e-10)]
    [InlineData(10, 5, 3, 0.995032461, 5e-10)]
    [InlineData(9, 3.5, 4, 0.996669900, 5e-10)]
    [InlineData(2, 1, 0.5, 0.997110467, 5e-10)]
    [InlineData(1.5, 1, 0.1, 0.98787870, 5e-9)]
    [InlineData(1, 1, 0.1, 0.8592514251, 5e-11)]
    [InlineData(1, 1, 0.25, 0.8308593615, 5e-11)]
    [InlineData(1, 1, 0.5, 0.7309879400, 5e-11)]
    [InlineData(1, 1, 1, 0.3964990394, 5e-11)]
    [InlineData(1.5, 1, 0.25, 0.9821563266, 5e-11)]
    [InlineData(1.5, 1, 0.5, 0.9562840284, 5e-11)]
    [InlineData(1.5, 1, 0.75, 0.8961730900, 5e-11)]
    [InlineData(1.5, 1, 1, 0.7856379118, 5e-11)]
    [InlineData(1.5, 1, 1.5, 0.4325202377, 5e-11)]
    [InlineData(2, 1, 1, 0.9658651551, 5e-11)]
    [InlineData(2, 1, 2, 0.4497279363, 5e-11)]
    [InlineData(0.5, 1, 0.5, 0.2671201962, 5e-11)]
    public void Decentred_beam(double aperture, double beam, double offset, double transmitted, double tolerance) =>
        Assert.Equal(transmitted, GaussianClipping.Transmitted(aperture, beam, offset), tolerance);

    [Fact]
    public void Power_through_is_a_part_that_falls_with_the_offset_and_does_not_depend_on_the_unit() =>
        Gen.Select(Gen.Double[0.1, 20], Gen.Double[0.1, 10], Gen.Double[0, 20], Gen.Double[0.001, 5]).Sample((a, w, d, more) =>
        {
            double t = GaussianClipping.Transmitted(a, w, d);
            return t is >= 0 and <= 1
                && GaussianClipping.Transmitted(a, w, d + more) <= t + 1e-12
                && Math.Abs(GaussianClipping.Transmitted(25.4 * a, 25.4 * w, 25.4 * d) - t) < 1e-10;
        });
}
