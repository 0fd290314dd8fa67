using MarkReader.Cameras.Calibration;
using MarkReader.Cameras.Tests.Support;

namespace MarkReader.Cameras.Tests.Calibration;

public sealed class CoverageTests
{
    // A print whose edges are out of place by several times the noise is out of place in all photos alike.
    [Theory]
    [InlineData(0)]
    [InlineData(0.02)]
    public void The_stated_intervals_hold_the_truth_as_often_as_they_say(double fault)
    {
        const int Cameras = 80;
        bool[][] inside = [.. Enumerable.Range(1, Cameras).AsParallel().AsOrdered().Select(seed => Inside(seed, fault))];

        string rates = string.Join(", ", Enumerable.Range(0, 9).Select(i => $"{CalibratedCamera.Names[i]} {inside.Count(x => x[i]) / (double)Cameras:0.000}"));
        double all = inside.Average(x => x.Take(6).Count(y => y) / 6.0);
        Assert.True(all is > 0.92 and < 0.98, $"{all:0.000}: {rates}");
        // Of 80 at 95 % fewer than 69 are inside once in a thousand times (binomial); twelve rates are looked at.
        Assert.All(Enumerable.Range(0, 6), i => Assert.InRange(inside.Count(x => x[i]), 69, Cameras));
    }

    private static bool[] Inside(int seed, double fault)
    {
        SimulatedBoard board = new(seed, fault: fault);
        CalibratedCamera found = CameraCalibration.Calibrate(board.Views).ValueOrThrow();
        double[] truth =
        [
            board.Camera.FocalX, board.Camera.FocalY, board.Camera.Principal.X, board.Camera.Principal.Y,
            board.Camera.Lens.K1, board.Camera.Lens.K2, board.Camera.Lens.K3, board.Camera.Lens.P1, board.Camera.Lens.P2,
        ];
        return [.. truth.Select((t, i) => Math.Abs(found.Values[i] - t) <= 1.96 * found.StandardUncertainties[i])];
    }
}
