using CsCheck;
using MarkReader.Alignment.Aiming;
using MarkReader.Alignment.Legs;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Tests.Aiming;

/// <summary>Two marks have a closed form: aim = near − (far − near)·(Lnear + k)/(Lfar − Lnear).</summary>
public sealed class TwoMarksTests
{
    private static readonly Gen<(double Near, double Travel, double[] Marks)> s_cases =
        Gen.Select(Gen.Double[20, 400], Gen.Double[50, 2000], Gen.Double[-12, 12].Array[4]);

    [Fact]
    public void Aim_is_the_closed_form() => s_cases.Sample(c =>
    {
        (CardPoint near, CardPoint far) = (new(c.Marks[0], c.Marks[1]), new(c.Marks[2], c.Marks[3]));
        AimSolution solution = Solve(Leg.Square, c, 0.03);
        CardPoint expected = near - ((c.Near / c.Travel) * (far - near));
        return solution.Aim.Point.DistanceTo(expected) < 1e-9
            && Math.Abs(solution.Slope.U - (1000 * (far.U - near.U) / c.Travel)) < 1e-9
            && Math.Abs(solution.Slope.V - (1000 * (far.V - near.V) / c.Travel)) < 1e-9
            && Math.Abs(solution.Ratio - (c.Near / c.Travel)) < 1e-6
            && solution.Residuals.All(r => r.Residual.Magnitude < 1e-9)
            && solution.Fit is { DegreesOfFreedom: 0, ChiSquare: 0, Probability: null };
    });

    [Fact]
    public void Variance_with_exact_paths_is_the_closed_form() => s_cases.Sample(c =>
    {
        double far = c.Near + c.Travel;
        double expected = 0.03 * 0.03 * ((far * far) + (c.Near * c.Near)) / (c.Travel * c.Travel);
        Covariance2 aim = Solve(Leg.Square, c, 0.03).Aim.Covariance;
        return Relative(aim.Uu, expected) && Relative(aim.Vv, expected) && Math.Abs(aim.Uv) < 1e-9 * expected;
    });

    [Fact]
    public void Path_and_pivot_uncertainties_propagate_along_the_line_of_the_marks() => s_cases.Sample(c =>
    {
        // d aim/d Lnear = −s·Lfar/(Lfar − Lnear) and d aim/d Lfar = s·Lnear/(Lfar − Lnear), s the slope; d aim/dk = −s.
        (double uPath, double uPivot) = (1.5, 4);
        double far = c.Near + c.Travel;
        Observation[] marks =
        [
            new(Some.Station(c.Near, uPath), Some.Point(c.Marks[0], c.Marks[1], 0.03)),
            new(Some.Station(far, uPath), Some.Point(c.Marks[2], c.Marks[3], 0.03)),
        ];
        AimSolution solution = AimSolver.Solve(Some.Leg(pivotUncertainty: uPivot), marks).ValueOrThrow();
        (double su, double sv) = (solution.Slope.U / 1000, solution.Slope.V / 1000);
        double lever = ((far * far) + (c.Near * c.Near)) / (c.Travel * c.Travel);
        double along = (uPath * uPath * lever) + (uPivot * uPivot);
        Covariance2 aim = solution.Aim.Covariance;
        return Relative(aim.Uu, (0.03 * 0.03 * lever) + (su * su * along))
            && Relative(aim.Vv, (0.03 * 0.03 * lever) + (sv * sv * along))
            && Math.Abs(aim.Uv - (su * sv * along)) < 1e-9 * (aim.Uu + aim.Vv);
    });

    [Fact]
    public void Aim_near_and_far_lie_on_one_line_in_this_order() => s_cases.Sample(c =>
    {
        CardPoint near = new(c.Marks[0], c.Marks[1]);
        CardVector step = new CardPoint(c.Marks[2], c.Marks[3]) - near;
        CardVector toAim = Solve(Leg.Square, c, 0.03).Aim.Point - near;
        double cross = (step.U * toAim.V) - (step.V * toAim.U);
        double dot = (step.U * toAim.U) + (step.V * toAim.V);
        // Marks that coincide have no order.
        return Math.Abs(cross) < 1e-8 && (dot < 0 || step.Magnitude < 1e-6);
    });

    [Fact]
    public void A_pivot_offset_moves_the_aim_along_the_line()
    {
        AimSolution solution = AimSolver.Solve(Some.Leg(pivot: 10), [Some.Mark(80, 1, 2), Some.Mark(480, 5, 0)]).ValueOrThrow();
        Assert.Equal(1 - (4 * 90 / 400.0), solution.Aim.Point.U, 1e-9);
        Assert.Equal(2 + (2 * 90 / 400.0), solution.Aim.Point.V, 1e-9);
        Assert.Equal(90 / 400.0, solution.Ratio, 1e-9);
    }

    [Fact]
    public void Marks_that_coincide_are_their_own_aim_and_keep_the_ratio_of_the_paths()
    {
        AimSolution solution = AimSolver.Solve(Leg.Square, [Some.Mark(80, 1, 2), Some.Mark(480, 1, 2)]).ValueOrThrow();
        Assert.Equal(0, solution.Aim.Point.DistanceTo(new(1, 2)), 1e-12);
        Assert.Equal(0.2, solution.Ratio, 1e-9);
        Assert.Equal(0, solution.Slope.Magnitude, 1e-12);
    }

    /// <summary>Common practice, no published source: on a common small desktop machine the aim lies half the separation beyond the near mark.</summary>
    [Fact]
    public void Trade_ratio_of_a_half_comes_from_a_travel_twice_the_near_path() => Assert.Equal(0.5, Ratio(near: 150, far: 450), 1e-9);

    /// <summary>Common practice, no published source: with a short near path and a long travel, a tenth.</summary>
    [Fact]
    public void Trade_ratio_of_a_tenth_comes_from_a_short_near_path_and_a_long_travel() => Assert.Equal(0.1, Ratio(near: 50, far: 550), 1e-9);

    private static double Ratio(double near, double far) =>
        AimSolver.Solve(Leg.Square, [Some.Mark(near, 0.4, -0.3), Some.Mark(far, 3.1, 1.2)]).ValueOrThrow().Ratio;

    private static AimSolution Solve(Leg leg, (double Near, double Travel, double[] Marks) c, double sigma) => AimSolver.Solve(
        leg,
        [Some.Mark(c.Near, c.Marks[0], c.Marks[1], sigma), Some.Mark(c.Near + c.Travel, c.Marks[2], c.Marks[3], sigma)]).ValueOrThrow();

    private static bool Relative(double value, double expected) => Math.Abs(value - expected) < 1e-6 * expected;
}
