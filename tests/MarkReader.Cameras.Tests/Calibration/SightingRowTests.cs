using CsCheck;
using MarkReader.Cameras.Boards;
using MarkReader.Cameras.Calibration;
using MarkReader.Cameras.Models;

namespace MarkReader.Cameras.Tests.Calibration;

public sealed class SightingRowTests
{
    [Fact]
    public void Derivatives_are_those_of_the_prediction() => Gen.Select(Gen.Double[-100, 100], Gen.Double[-100, 100], Gen.Double[-0.5, 0.5], Gen.Double[-0.5, 0.5], Gen.Double[0, 6.28]).Sample((u, v, wx, wy, angle) =>
    {
        BoardPose pose = new BoardPose([1, 0, 0, 0, -1, 0, 0, 0, -1], [10, -20, 350]).Moved(wx, wy, 0.3, 0, 0, 0);
        Globals globals = new(
            new(new(4000, 3000), 3000, 3020, new(2000, 1500), new(-0.1, 0.03, -0.01, 0.001, -0.0005)),
            new(0.001, 3, -2, 1, 0.02) { Skew = 0.002 });
        BoardSighting sighting = new(new(u, v), new(1900, 1400), new(Math.Cos(angle), Math.Sin(angle)), 0.1, 0, new(0.6, 0.8));
        GrowthField growth = new(globals.Camera.Photo, [0.2, 0.1, -0.05, 0.03, 0.02, -0.04, 0.05, -0.03]);
        const double Fault = 0.01;
        double[] shared = new double[Globals.Count], view = new double[SightingRow.OfView], unused = new double[Globals.Count], unusedView = new double[SightingRow.OfView];
        SightingRow.Fill(sighting, globals, pose, growth, Fault, shared, view);
        double[] steps = [1e-3, 1e-3, 1e-3, 1e-3, 1e-6, 1e-6, 1e-6, 1e-6, 1e-6, 1e-6, 1e-3, 1e-3, 1e-3, 1e-3, 1e-6];
        for (int k = 0; k < Globals.Count; k++)
        {
            double[] d = new double[Globals.Count];
            d[k] = steps[k];
            double up = SightingRow.Fill(sighting, globals.Moved(d), pose, growth, Fault, unused, unusedView);
            d[k] = -steps[k];
            double down = SightingRow.Fill(sighting, globals.Moved(d), pose, growth, Fault, unused, unusedView);
            AssertNear(shared[k], (down - up) / (2 * steps[k]));
        }

        double[] moves = [1e-6, 1e-6, 1e-6, 1e-3, 1e-3, 1e-3];
        for (int k = 0; k < 6; k++)
        {
            double[] m = new double[6];
            m[k] = moves[k];
            double up = SightingRow.Fill(sighting, globals, pose.Moved(m[0], m[1], m[2], m[3], m[4], m[5]), growth, Fault, unused, unusedView);
            m[k] = -moves[k];
            double down = SightingRow.Fill(sighting, globals, pose.Moved(m[0], m[1], m[2], m[3], m[4], m[5]), growth, Fault, unused, unusedView);
            AssertNear(view[k], (down - up) / (2 * moves[k]));
        }

        for (int k = 0; k < GrowthField.Count; k++)
        {
            double[] g = new double[GrowthField.Count];
            g[k] = 1e-3;
            double up = SightingRow.Fill(sighting, globals, pose, growth.Moved(g), Fault, unused, unusedView);
            g[k] = -1e-3;
            double down = SightingRow.Fill(sighting, globals, pose, growth.Moved(g), Fault, unused, unusedView);
            AssertNear(view[SightingRow.Growth + k], (down - up) / 2e-3);
        }
    });

    [Fact]
    public void A_point_behind_the_camera_has_no_residual()
    {
        Globals globals = new(new(new(4000, 3000), 3000, 3000, new(2000, 1500), LensDistortion.None), BoardShape.Flat);

        double residual = SightingRow.Fill(default(BoardSighting) with { Along = new(1, 0) }, globals, new([1, 0, 0, 0, 1, 0, 0, 0, 1], [0, 0, -10]), GrowthField.None(globals.Camera.Photo), 0, new double[Globals.Count], new double[SightingRow.OfView]);

        Assert.True(double.IsNaN(residual));
    }

    private static void AssertNear(double expected, double actual) => Assert.InRange(Math.Abs(expected - actual), 0, 1e-5 * Math.Max(1, Math.Abs(expected)));
}
