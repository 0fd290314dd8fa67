using CsCheck;
using MarkReader.Alignment.Aiming;
using MarkReader.Alignment.Legs;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Tests.Aiming;

public sealed class ManyMarksTests
{
    private const double Near = 80, Far = 480, Sigma = 0.05;

    [Fact]
    public void Repeated_pulses_have_the_variance_of_the_closed_form() => Gen.Select(Gen.Int[1, 6], Gen.Int[1, 6]).Sample((near, far) =>
    {
        double expected = Sigma * Sigma * ((Far * Far / near) + (Near * Near / far)) / ((Far - Near) * (Far - Near));
        return Math.Abs(Variance(near, far) - expected) < 1e-9 * expected;
    });

    /// <summary>P. G. Hoel and A. Levine, Ann. Math. Stat. 35 (1964) 1553: pulses at each station in inverse proportion to its distance from the aim's place.</summary>
    [Theory]
    [InlineData(7, 6)]
    [InlineData(14, 12)]
    public void Best_split_of_pulses_is_far_path_to_near_path(int pulses, int near)
    {
        int best = Enumerable.Range(1, pulses - 1).MinBy(n => Variance(n, pulses - n));
        Assert.Equal(near, best);
        Assert.Equal(Far / Near, best / (double)(pulses - best), 1e-9);
    }

    [Fact]
    public void Three_near_pulses_and_one_far_have_about_a_third_of_the_variance_of_one_and_one() =>
        Assert.Equal(1.0 / 3, Variance(3, 1) / Variance(1, 1), 0.02);

    [Fact]
    public void Pulses_at_one_station_share_its_path_error_so_that_repeats_do_not_average_it_away()
    {
        // A slope of 20 mrad and a path known to 2 mm: 0.04 mm, against marks good to a micrometre.
        Observation[] Marks(int repeats) =>
        [
            .. Enumerable.Repeat(new Observation(Some.Station(Near, 2), Some.Point(1.6, 0, 0.001)), repeats),
            .. Enumerable.Repeat(new Observation(Some.Station(Far, 2), Some.Point(9.6, 0, 0.001)), repeats),
        ];
        double once = AimSolver.Solve(Leg.Square, Marks(1)).ValueOrThrow().Aim.Covariance.Uu;
        double often = AimSolver.Solve(Leg.Square, Marks(9)).ValueOrThrow().Aim.Covariance.Uu;
        Assert.Equal(0.02 * 0.02 * 4 * 236800 / 160000, once, 1e-5);
        Assert.InRange(often / once, 0.99, 1.0);
    }

    [Fact]
    public void Turning_and_moving_the_tape_turns_and_moves_the_aim_and_its_covariance() =>
        Gen.Select(Gen.Double[-0.02, 0.02].Array[2], Gen.Double[-0.1, 0.1].Array[8], Gen.Double[-3.1, 3.1], Gen.Double[-5, 5].Array[2]).Sample((slope, noise, angle, shift) =>
        {
            (double sin, double cos) = Math.SinCos(angle);
            CardPoint Turn(CardPoint p) => new((cos * p.U) - (sin * p.V) + shift[0], (sin * p.U) + (cos * p.V) + shift[1]);
            Covariance2 each = new(0.0009, 0.0004, 0.0025);
            Observation[] marks =
            [
                .. new[] { 80.0, 80, 250, 480 }.Select((path, i) => new Observation(Some.Station(path, 1), new(new((slope[0] * path) + noise[2 * i], (slope[1] * path) + noise[(2 * i) + 1]), each))),
            ];
            Observation[] turned =
            [
                .. marks.Select(m => new Observation(m.Station, new MeasuredPoint(Turn(m.Place), m.Mark.Covariance.Transform(cos, -sin, sin, cos)))),
            ];
            AimSolution plain = AimSolver.Solve(Leg.Square, marks).ValueOrThrow();
            AimSolution other = AimSolver.Solve(Leg.Square, turned).ValueOrThrow();
            Covariance2 expected = plain.Aim.Covariance.Transform(cos, -sin, sin, cos);
            return other.Aim.Point.DistanceTo(Turn(plain.Aim.Point)) < 1e-6
                && Math.Abs(other.Aim.Covariance.Uu - expected.Uu) < 1e-6
                && Math.Abs(other.Aim.Covariance.Uv - expected.Uv) < 1e-6
                && Math.Abs(other.Fit.ChiSquare - plain.Fit.ChiSquare) < 1e-6 * (1 + plain.Fit.ChiSquare);
        });

    [Fact]
    public void Marks_off_a_line_earn_a_warning_and_show_in_the_residuals()
    {
        AimSolution solution = AimSolver.Solve(Leg.Square, [Some.Mark(80, 0, 0), Some.Mark(280, 1, 0.3), Some.Mark(480, 2, 0)]).ValueOrThrow();
        Assert.Equal("marksOffLine", Assert.Single(solution.Warnings).Code);
        Assert.Equal(2, solution.Fit.DegreesOfFreedom);
        Assert.Equal(0.3 * 0.3 * (2.0 / 3) / (0.01 * 0.01), solution.Fit.ChiSquare, 1e-3);
        Assert.True(solution.Fit.Probability < 1e-12);
        Assert.Equal(3, solution.Residuals.Count);
        Assert.Equal([-0.1, 0.2, -0.1], solution.Residuals.Select(r => Math.Round(r.Residual.V, 9)));
    }

    [Fact]
    public void Marks_on_a_line_within_their_uncertainty_earn_none()
    {
        AimSolution solution = AimSolver.Solve(Leg.Square, [Some.Mark(80, 0, 0), Some.Mark(280, 1, 0.01), Some.Mark(480, 2, 0)]).ValueOrThrow();
        Assert.Empty(solution.Warnings);
        Assert.InRange(solution.Fit.Probability!.Value, 0.5, 0.9);
    }

    [Fact]
    public void Marks_that_fit_nothing_give_a_warning_or_a_refusal_and_never_a_fault() => Gen.Double[-12, 12].Array[8].Sample(uv =>
    {
        Observation[] marks = [.. new[] { 80.0, 80, 250, 480 }.Select((path, i) => new Observation(Some.Station(path, 1), Some.Point(uv[2 * i], uv[(2 * i) + 1], 0.03)))];
        return AimSolver.Solve(Leg.Square, marks).TryGet(out AimSolution? solution, out Failure? failure)
            ? solution.Fit.Probability > AimSolver.ImprobableBelow || solution.Warnings.Any(w => w.Code == "marksOffLine")
            : failure.Code == LegFailures.NoFit;
    });

    [Fact]
    public void A_slope_that_no_leg_has_earns_a_warning()
    {
        AimSolution solution = AimSolver.Solve(Leg.Square, [Some.Mark(80, 0, 0), Some.Mark(100, 9, 0)]).ValueOrThrow();
        Assert.Equal("largeSlope", Assert.Single(solution.Warnings).Code);
    }

    private static double Variance(int near, int far) => AimSolver.Solve(
        Leg.Square,
        [.. Enumerable.Repeat(Some.Mark(Near, 1, 2, Sigma), near), .. Enumerable.Repeat(Some.Mark(Far, 4, 3, Sigma), far)]).ValueOrThrow().Aim.Covariance.Uu;
}
