using MarkReader.Application.Aiming;
using MarkReader.Quantities;

namespace MarkReader.Application.Tests.Aiming;

public sealed class CheckedLegTests
{
    [Theory]
    [InlineData(80, 80, 1, 0, 0, 0, "PATHS_EQUAL")]
    [InlineData(80, 480, -1, 0, 0, 0, "PATH_UNCERTAINTY_INVALID")]
    [InlineData(80, 480, 1, 90, 0, 0, "INCIDENCE_INVALID")]
    [InlineData(80, 480, 1, 0, 500, 0, "PIVOT_OFFSET_INVALID")]
    [InlineData(80, 480, 1, 0, 0, -1, "PIVOT_UNCERTAINTY_INVALID")]
    public void Each_wrong_number_has_its_own_refusal(double near, double far, double path, double incidence, double pivot, double pivotUncertainty, string code)
    {
        Assert.False(CheckedLeg.From(new(near, far, path, incidence, pivot, pivotUncertainty)).TryGet(out _, out Failure? failure));
        Assert.Equal(code, failure.Code.Name);
    }

    [Fact]
    public void Sound_numbers_become_a_leg_with_two_stations()
    {
        CheckedLeg leg = CheckedLeg.From(new(80, 480, 2, -45, 10, 3)).ValueOrThrow();
        Assert.Equal(80, leg.Near.Path.Millimetres);
        Assert.Equal(480, leg.Far.Path.Millimetres);
        Assert.Equal(2, leg.Far.PathUncertainty.Millimetres);
        Assert.Equal(-45, leg.Leg.Incidence.Degrees, 1e-12);
        Assert.Equal(10, leg.Leg.PivotOffset.Millimetres);
        Assert.Equal(3, leg.Leg.PivotUncertainty.Millimetres);
    }
}
