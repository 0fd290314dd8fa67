using CsCheck;

namespace MarkReader.Quantities.Tests;

public sealed class UnitsTests
{
    [Fact]
    public void Inches_are_25_4_mm_both_ways() => Gen.Double[-1e4, 1e4].Sample(x =>
        Math.Abs(Length.FromInches(x).Millimetres - (25.4 * x)) < 1e-8 && Math.Abs(Length.FromMillimetres(x).Inches - (x / 25.4)) < 1e-8);

    [Fact]
    public void Angles_agree_in_degrees_radians_and_milliradians()
    {
        Assert.Equal(Math.PI / 4, Angle.FromDegrees(45).Radians, 1e-15);
        Assert.Equal(45, Angle.FromRadians(Math.PI / 4).Degrees, 1e-12);
        Assert.Equal(12.5, Angle.FromMilliradians(12.5).Milliradians, 1e-12);
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(double.NegativeInfinity)]
    public void Lengths_and_angles_are_finite(double value)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Length.FromMillimetres(value));
        Assert.Throws<ArgumentOutOfRangeException>(() => Length.FromInches(value));
        Assert.Throws<ArgumentOutOfRangeException>(() => Angle.FromRadians(value));
        Assert.Throws<ArgumentOutOfRangeException>(() => Angle.FromDegrees(value));
        Assert.Throws<ArgumentOutOfRangeException>(() => Angle.FromMilliradians(value));
    }

    [Fact]
    public void Lengths_add_compare_and_print_in_millimetres()
    {
        Length a = Length.FromMillimetres(1.5), b = Length.FromMillimetres(2);
        Assert.Equal(3.5, (a + b).Millimetres);
        Assert.Equal(-0.5, (a - b).Millimetres);
        Assert.True(a < b && b > a && a <= b && b >= a && a.CompareTo(b) < 0);
        Assert.Equal("1.5 mm", a.ToString());
        Assert.Equal("45 deg", Angle.FromDegrees(45).ToString());
    }
}
