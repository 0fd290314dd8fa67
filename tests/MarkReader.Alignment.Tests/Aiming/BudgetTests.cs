using CsCheck;
using MarkReader.Alignment.Aiming;
using MarkReader.Alignment.Legs;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Tests.Aiming;

/// <summary>The covariance of the aim point by source.</summary>
public sealed class BudgetTests
{
    // Marks off both axes and apart in both: every source adds something to both components.
    private static readonly Gen<(double Near, double Travel, double[] Marks, double Incidence)> s_cases =
        Gen.Select(Gen.Double[20, 400], Gen.Double[50, 2000], Gen.Double[-12, 12].Array[4], Gen.Double[-50, 50])
            .Where((_, _, m, _) => m.All(x => Math.Abs(x) > 0.001) && Math.Abs(m[2] - m[0]) > 0.001 && Math.Abs(m[3] - m[1]) > 0.001);

    [Fact]
    public void Budget_adds_up_to_the_covariance_with_shared_errors_tilted_targets_and_many_marks() => s_cases.Sample(c =>
    {
        // The third lies up to 0.3 mm beside the line of the others: marks centimetres apart from any line may be refused.
        (double u, double v) = (((c.Marks[0] + c.Marks[2]) / 2) + (c.Marks[1] / 40), ((c.Marks[1] + c.Marks[3]) / 2) + (c.Marks[2] / 40));
        Observation[] marks = [.. Marks(c), new(Some.Station(c.Near + (c.Travel / 2), 1), Some.Point(u, v, 0.02))];
        for (int count = 2; count <= 3; count++)
        {
            AimSolution solution = AimSolver.Solve(Some.Leg(c.Incidence, 5, 2), [.. marks.Take(count)]).ValueOrThrow();
            Covariance2 sum = solution.Budget.Select(b => b.Covariance).Aggregate((a, b) => a + b);
            Assert.Equal(solution.Budget.Count, solution.Budget.Select(b => b.Source).Distinct().Count());
            Assert.Equal(
                [UncertaintySource.Noise, UncertaintySource.Flatness, UncertaintySource.PrintScale, UncertaintySource.Parallax, UncertaintySource.PathLengths, UncertaintySource.PivotOffset],
                solution.Budget.Select(b => b.Source));
            Assert.Equal(1, sum.Uu / solution.Aim.Covariance.Uu, 1e-9);
            Assert.Equal(1, sum.Vv / solution.Aim.Covariance.Vv, 1e-9);
        }
    });

    [Fact]
    public void Error_of_the_print_s_scale_moves_the_aim_by_the_aim_s_own_distance_from_the_centre() => s_cases.Sample(c =>
    {
        AimSolution solution = AimSolver.Solve(Leg.Square, Marks(c)).ValueOrThrow();
        Covariance2 print = solution.Budget.Single(b => b.Source == UncertaintySource.PrintScale).Covariance;
        return Math.Abs(Math.Sqrt(print.Uu) - (0.0025 * Math.Abs(solution.Aim.Point.U))) < 1e-9
            && Math.Abs(Math.Sqrt(print.Vv) - (0.004 * Math.Abs(solution.Aim.Point.V))) < 1e-9;
    });

    [Fact]
    public void Tape_height_seen_from_one_place_moves_the_aim_as_that_place_says() => s_cases.Sample(c =>
    {
        // Both photos from one place: the displacement is linear in the mark, so the aim is moved like a mark that stands there.
        AimSolution solution = AimSolver.Solve(Leg.Square, Marks(c)).ValueOrThrow();
        Covariance2 tape = solution.Budget.Single(b => b.Source == UncertaintySource.Parallax).Covariance;
        CardVector expected = Tape(solution.Aim.Point);
        return Math.Abs(tape.Uu - (expected.U * expected.U)) < 1e-9 && Math.Abs(tape.Vv - (expected.V * expected.V)) < 1e-9;
    });

    [Fact]
    public void Marks_own_errors_are_weighted_by_the_closed_form() => s_cases.Sample(c =>
    {
        double r = c.Near / c.Travel;
        Covariance2 noise = AimSolver.Solve(Leg.Square, Marks(c)).ValueOrThrow().Budget.Single(b => b.Source == UncertaintySource.Noise).Covariance;
        double expected = (0.01 * 0.01 * (1 + r) * (1 + r)) + (0.02 * 0.02 * r * r);
        return Math.Abs((noise.Uu / expected) - 1) < 1e-9 && Math.Abs((noise.Vv / expected) - 1) < 1e-9;
    });

    [Fact]
    public void Sources_that_add_nothing_have_no_line()
    {
        AimSolution solution = AimSolver.Solve(Leg.Square, [Some.Mark(80, 1, 2), Some.Mark(480, 5, 0)]).ValueOrThrow();
        Assert.Equal([UncertaintySource.Noise], solution.Budget.Select(b => b.Source));
    }

    [Fact]
    public void Closed_form_of_two_marks_is_what_the_solver_finds() => s_cases.Sample(c =>
    {
        Observation[] marks = Marks(c);
        CardPoint closed = TwoMarkAim.Of(Angle.FromDegrees(c.Incidence), (marks[0].Place, c.Near), (marks[1].Place, c.Near + c.Travel), 7);
        return closed.DistanceTo(AimSolver.Solve(Some.Leg(c.Incidence, 7), marks).ValueOrThrow().Aim.Point) < 1e-7;
    });

    private static Observation[] Marks((double Near, double Travel, double[] Marks, double Incidence) c)
    {
        CardPoint near = new(c.Marks[0], c.Marks[1]), far = new(c.Marks[2], c.Marks[3]);
        return [new(Some.Station(c.Near, 1), near, Errors(near, 0.01)), new(Some.Station(c.Near + c.Travel, 1), far, Errors(far, 0.02))];
    }

    private static MarkErrors Errors(CardPoint place, double noise) => new(
        [new(UncertaintySource.Noise, Covariance2.Isotropic(noise)), new(UncertaintySource.Flatness, new(0.0004, 0.0001, 0.0003))],
        [
            new(UncertaintySource.PrintScale, "u", new(0.0025 * place.U, 0)),
            new(UncertaintySource.PrintScale, "v", new(0, 0.004 * place.V)),
            new(UncertaintySource.Parallax, "tape", Tape(place)),
        ]);

    private static CardVector Tape(CardPoint place) => -0.3 / 160 * (place - new CardPoint(40, -25));
}
