using CsCheck;
using MarkReader.Alignment.Aiming;
using MarkReader.Alignment.Legs;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Tests.Aiming;

/// <summary>What may not depend on the unit, on the frame or on the order of the marks. Turned and moved tape: <see cref="ManyMarksTests"/>.</summary>
public sealed class AimInvarianceTests
{
    private static readonly double[] s_paths = [80, 80, 250, 480];
    private static readonly int[] s_order = [0, 1, 2, 3];

    private static readonly Gen<(double[] Slope, double[] Noise, double Incidence)> s_legs =
        Gen.Select(Gen.Double[-0.02, 0.02].Array[2], Gen.Double[-0.1, 0.1].Array[8], Gen.Double[-50, 50]);

    [Fact]
    public void The_unit_of_all_lengths_does_not_matter() => Gen.Select(s_legs, Gen.Double[0.1, 25.4]).Sample((leg, unit) =>
    {
        AimSolution plain = Solve(leg, Marks(leg, 1), 1), other = Solve(leg, Marks(leg, unit), unit);
        CardPoint scaled = new(unit * plain.Aim.Point.U, unit * plain.Aim.Point.V);
        double square = unit * unit;
        return other.Aim.Point.DistanceTo(scaled) < 1e-6 * unit
            && Math.Abs((other.Aim.Covariance.Uu / (square * plain.Aim.Covariance.Uu)) - 1) < 1e-5
            && Math.Abs((other.Aim.Covariance.Vv / (square * plain.Aim.Covariance.Vv)) - 1) < 1e-5
            && Math.Abs(other.Slope.U - plain.Slope.U) < 1e-5
            && Math.Abs(other.Ratio - plain.Ratio) < 1e-5
            && Math.Abs(other.Fit.ChiSquare - plain.Fit.ChiSquare) < 1e-5 * (1 + plain.Fit.ChiSquare);
    });

    [Fact]
    public void The_order_of_the_marks_does_not_matter() => Gen.Select(s_legs, Gen.Shuffle(s_order)).Sample((leg, order) =>
    {
        Observation[] marks = Marks(leg, 1);
        AimSolution plain = Solve(leg, marks, 1), other = Solve(leg, [.. order.Select(i => marks[i])], 1);
        return other.Aim.Point.DistanceTo(plain.Aim.Point) < 1e-7 && Math.Abs(other.Aim.Covariance.Uu - plain.Aim.Covariance.Uu) < 1e-9;
    });

    /// <summary>Gauss and Markov: with known scatter and exact paths another mark, wherever it falls, can be given no weight at worst.</summary>
    [Fact]
    public void Another_mark_of_known_scatter_never_raises_the_stated_uncertainty() =>
        Gen.Select(Gen.Double[-0.02, 0.02].Array[2], Gen.Double[-0.1, 0.1].Array[8], Gen.Double[40, 900], Gen.Double[-0.1, 0.1].Array[2], Gen.Double[0.01, 0.5]).Sample((slope, noise, path, off, sigma) =>
        {
            Observation At(double length, double u, double v, double s) => Some.Mark(length, (slope[0] * length) + u, (slope[1] * length) + v, s);
            Observation[] marks = [.. s_paths.Select((p, i) => At(p, noise[2 * i], noise[(2 * i) + 1], 0.05))];
            Covariance2 before = AimSolver.Solve(Leg.Square, marks).ValueOrThrow().Aim.Covariance;
            Covariance2 after = AimSolver.Solve(Leg.Square, [.. marks, At(path, off[0], off[1], sigma)]).ValueOrThrow().Aim.Covariance;
            return after.Uu <= before.Uu * (1 + 1e-9) && after.Vv <= before.Vv * (1 + 1e-9);
        });

    private static AimSolution Solve((double[] Slope, double[] Noise, double Incidence) leg, Observation[] marks, double unit) =>
        AimSolver.Solve(Some.Leg(leg.Incidence, 5 * unit, 2 * unit), marks).ValueOrThrow();

    private static Observation[] Marks((double[] Slope, double[] Noise, double Incidence) leg, double unit) =>
    [
        .. s_paths.Select((path, i) => new Observation(
            Some.Station(unit * path, unit),
            Some.Point(unit * ((leg.Slope[0] * path) + leg.Noise[2 * i]), unit * ((leg.Slope[1] * path) + leg.Noise[(2 * i) + 1]), 0.05 * unit))),
    ];
}
