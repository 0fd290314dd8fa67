using MarkReader.Cameras.Calibration;
using MarkReader.Cameras.Tests.Support;

namespace MarkReader.Cameras.Tests.Calibration;

public sealed class CoverageTests
{
    [Fact]
    public void The_stated_intervals_hold_the_truth_as_often_as_they_say()
    {
        const int Cameras = 100;
        bool[][] inside = [.. Enumerable.Range(1, Cameras).AsParallel().AsOrdered().Select(Inside)];

        string rates = string.Join(", ", Enumerable.Range(0, 9).Select(i => $"{CalibratedCamera.Names[i]} {inside.Count(x => x[i]) / (double)Cameras:0.000}"));
        double all = inside.Average(x => x.Take(6).Count(y => y) / 6.0);
        Assert.True(all is > 0.92 and < 0.98, $"{all:0.000}: {rates}");
        // Terms taken as nothing where the photos show nothing have no interval, so only those always fitted are held to the share one by one.
        Assert.All(Enumerable.Range(0, 4), i => Assert.InRange(inside.Count(x => x[i]) / (double)Cameras, 0.89, 0.99));
    }

    private static bool[] Inside(int seed)
    {
        SimulatedBoard board = new(seed);
        CalibratedCamera found = CameraCalibration.Calibrate(board.Views).ValueOrThrow();
        double[] truth =
        [
            board.Camera.FocalX, board.Camera.FocalY, board.Camera.Principal.X, board.Camera.Principal.Y,
            board.Camera.Lens.K1, board.Camera.Lens.K2, board.Camera.Lens.K3, board.Camera.Lens.P1, board.Camera.Lens.P2,
        ];
        return [.. truth.Select((t, i) => Math.Abs(found.Values[i] - t) <= 1.96 * found.StandardUncertainties[i])];
    }
}
