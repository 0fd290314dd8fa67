using CsCheck;
using MarkReader.Alignment.Frames;
using MarkReader.Alignment.Screws;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Tests.Screws;

public sealed class SlopeTurnsTests
{
    private static readonly Covariance2 None = Covariance2.Isotropic(0);

    /// <summary>Equilateral mount, r = 25 mm, M4: a plate slope of 1 mrad needs (0, −0.0309295, +0.0309295) or (+0.0357143, −0.0178571, −0.0178571) turns.</summary>
    [Theory]
    [InlineData(2, 0, 0, -0.0309295, 0.0309295)]
    [InlineData(0, 1.4142136, 0.0357143, -0.0178571, -0.0178571)]
    public void Three_screws_share_a_slope_so_that_the_middle_stays(double u, double v, double first, double second, double third)
    {
        MirrorFrame frame = MirrorFrame.Of([.. new[] { 90.0, 210, 330 }.Select((a, i) =>
            new FrameContact($"S{i}", 25 * Math.Cos(a * Math.PI / 180), 25 * Math.Sin(a * Math.PI / 180)))], 0.7).ValueOrThrow();
        double[] turns = [.. SlopeTurns.ToRemove(new(u, v, None), [.. ScrewGeometry.Of(frame).Select(Exact)]).Select(t => t.Turns)];
        Assert.Equal(3, turns.Length);
        Assert.Equal(first, turns[0], 1e-6);
        Assert.Equal(second, turns[1], 1e-6);
        Assert.Equal(third, turns[2], 1e-6);
        Assert.Equal(0, turns.Sum(), 1e-9);
    }

    [Fact]
    public void Turns_and_responses_add_up_to_the_slope() =>
        Gen.Select(Gen.Double[-8, 8], Gen.Double[-8, 8], Gen.Double[20, 60], Gen.Double[-10, 10], Gen.Double[-10, 10], Gen.Double[-60, -20]).Sample((u, v, au, av, bu, bv) =>
        {
            IReadOnlyList<ScrewTurns> turns = SlopeTurns.ToRemove(new(u, v, None), [Exact("A", au, av), Exact("B", bu, bv)]);
            return Math.Abs((turns[0].Turns * au) + (turns[1].Turns * bu) + u) < 1e-5 && Math.Abs((turns[0].Turns * av) + (turns[1].Turns * bv) + v) < 1e-5;
        });

    [Fact]
    public void The_uncertainty_is_that_of_slope_and_response()
    {
        ScrewResponse a = Exact("A", 40, 0) with { Covariance = new(16, 0, 0) }, b = Exact("B", 0, -30);
        IReadOnlyList<ScrewTurns> turns = SlopeTurns.ToRemove(new(4, 0, new(0.09, 0, 0.09)), [a, b]);
        Assert.Equal(-0.1, turns[0].Turns, 1e-6);
        // (0.3 mrad and 0.1 turn of 4 mrad/turn) over 40 mrad/turn.
        Assert.Equal(Math.Sqrt(0.09 + 0.16) / 40, turns[0].Uncertainty, 1e-6);
        Assert.Equal(0.3 / 30, turns[1].Uncertainty, 1e-6);
    }

    private static ScrewResponse Exact(ScrewGeometry g) => Exact(g.Screw, g.SlopeU, g.SlopeV);

    private static ScrewResponse Exact(string screw, double u, double v) => new(screw, u, v, None, 1, Angle.Zero);
}
