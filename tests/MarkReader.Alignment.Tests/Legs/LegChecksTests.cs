using MarkReader.Alignment.Aiming;
using MarkReader.Alignment.Legs;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Tests.Legs;

public sealed class LegChecksTests
{
    [Theory]
    [InlineData(200, 200, 1, "PATHS_EQUAL")]
    [InlineData(480, 80, 1, "PATHS_SWAPPED")]
    [InlineData(-80, 480, 1, "PATH_NEGATIVE")]
    [InlineData(80, -480, 1, "PATH_NEGATIVE")]
    [InlineData(0, 480, 1, "PATH_ZERO")]
    [InlineData(1e-9, 480, 1, "PATH_TOO_SHORT")]
    [InlineData(double.NaN, 480, 1, "PATH_NOT_A_NUMBER")]
    [InlineData(80, double.NaN, 1, "PATH_NOT_A_NUMBER")]
    [InlineData(80, double.PositiveInfinity, 1, "PATH_NOT_A_NUMBER")]
    [InlineData(80, 20_001, 1, "PATH_TOO_LONG")]
    [InlineData(80, 89.9, 1, "TRAVEL_TOO_SHORT")]
    [InlineData(80, 480, 60, "TRAVEL_UNCERTAIN")]
    [InlineData(80, 480, -1, "PATH_UNCERTAINTY_INVALID")]
    [InlineData(80, 480, double.NaN, "PATH_UNCERTAINTY_INVALID")]
    public void Wrong_path_lengths_are_refused_each_with_its_own_code(double near, double far, double uncertainty, string code) =>
        IsRefusal(code, LegChecks.NearAndFar(near, far, uncertainty));

    [Theory]
    [InlineData(80, 480, 1)]
    [InlineData(1, 20_000, 0)]
    [InlineData(80, 90, 1)]
    public void Sound_path_lengths_pass(double near, double far, double uncertainty) => Assert.Null(LegChecks.NearAndFar(near, far, uncertainty));

    [Theory]
    [InlineData(80)]
    [InlineData(-80)]
    [InlineData(double.NaN)]
    public void Incidence_of_80_degrees_or_more_is_refused(double degrees) => IsRefusal("INCIDENCE_INVALID", LegChecks.Incidence(degrees));

    [Fact]
    public void Incidence_of_45_degrees_either_way_passes()
    {
        Assert.Null(LegChecks.Incidence(45));
        Assert.Null(LegChecks.Incidence(-45));
    }

    [Theory]
    [InlineData(201, 0, "PIVOT_OFFSET_INVALID")]
    [InlineData(double.NaN, 0, "PIVOT_OFFSET_INVALID")]
    [InlineData(-80, 0, "PIVOT_OFFSET_INVALID")]
    [InlineData(10, -1, "PIVOT_UNCERTAINTY_INVALID")]
    [InlineData(10, double.NaN, "PIVOT_UNCERTAINTY_INVALID")]
    public void Wrong_pivot_offsets_are_refused(double offset, double uncertainty, string code) =>
        IsRefusal(code, LegChecks.Pivot(offset, uncertainty, shortestPath: 80));

    [Fact]
    public void Solver_refuses_marks_of_a_single_station_and_marks_without_uncertainty()
    {
        IsRefusal("TOO_FEW_STATIONS", FailureOf([Some.Mark(80, 0, 0), Some.Mark(80, 1, 0)]));
        IsRefusal("TOO_FEW_STATIONS", FailureOf([]));
        IsRefusal("MARK_UNCERTAINTY_ZERO", FailureOf([Some.Mark(80, 0, 0, sigma: 0), Some.Mark(480, 1, 0)]));
        IsRefusal("PATH_NEGATIVE", FailureOf([Some.Mark(-80, 0, 0), Some.Mark(480, 1, 0)]));
        IsRefusal("TRAVEL_UNCERTAIN", FailureOf([new(Some.Station(80, 30), Some.Point(0, 0)), new(Some.Station(180, 1), Some.Point(0, 0))]));
    }

    private static Failure? FailureOf(Observation[] marks) => AimSolver.Solve(Leg.Square, marks).TryGet(out _, out Failure? failure) ? null : failure;

    private static void IsRefusal(string code, Failure? failure)
    {
        Assert.NotNull(failure);
        Assert.Equal(code, failure.Code.Name);
        Assert.Equal(FailureKind.BadInput, failure.Code.Kind);
        Assert.NotEqual("", failure.Hint);
        Assert.DoesNotContain('\n', failure.ToString());
    }
}
