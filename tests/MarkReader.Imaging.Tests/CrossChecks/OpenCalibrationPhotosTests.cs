using MarkReader.Cameras.Boards;
using MarkReader.Cameras.Calibration;
using MarkReader.Cameras.Models;
using MarkReader.Quantities;
using MathNet.Numerics.LinearAlgebra;
using OpenCvSharp;

namespace MarkReader.Imaging.Tests.CrossChecks;

/// <summary>
/// OpenCV's own calibration photos (left01 … left14, see OpenData/README.md) with its own corners; the fit is ours. Published values:
/// samples/python/calibrate.py of OpenCV as many stored files quote it, and samples/data/left_intrinsics.yml.
/// </summary>
public sealed class OpenCalibrationPhotosTests
{
    private const int Columns = 9;
    private const int Rows = 6;

    private static readonly string[] s_photos = [.. Enumerable.Range(1, 14).Where(i => i != 10).Select(i => $"left{i:00}.jpg")];

    /// <summary>calibrate.py's result: fx, fy, cx, cy, k1, k2, k3, p1, p2.</summary>
    private static readonly double[] s_published = [532.79536563, 532.91928339, 342.4582516, 233.90060514, -0.281086258, 0.0272581009, 0.158514023, 0.00121665908, -0.000134204274];

    [Fact]
    public void Plain_least_squares_gives_the_published_numbers()
    {
        FittedCalibration fit = CameraCalibration.LeastSquares(Views(5), CameraTerms.Lens | CameraTerms.Aspect)!;

        double[] values = fit.State.Shared.Values();
        double[] tolerances = [0.15, 0.15, 0.15, 0.15, 0.001, 0.008, 0.02, 0.00003, 0.00003]; // versions of the corner finder and the JPEG decoder differ
        Assert.All(Enumerable.Range(0, 9), i => Assert.Equal(s_published[i], values[i], tolerances[i]));
        // Per corner, as OpenCV counts.
        double rms = Math.Sqrt(2 * fit.Residuals.SelectMany(r => r).Average(r => r * r));
        Assert.Equal(0.1964, rms, 0.002);
        // OpenCV's own standard deviations for this set, half of their squares (they come out √2 too large by simulation).
        double[] deviations = [0.64, 0.67, 0.68, 0.75, 0.008, 0.061, 0.13, 0.00016, 0.00021];
        Matrix<double> model = fit.Covariance;
        Assert.All(Enumerable.Range(0, 9), i => Assert.InRange(Math.Sqrt(model[i, i]) / deviations[i], 0.5, 2));
    }

    [Fact]
    public void The_sound_fit_is_found_within_the_stated_uncertainty()
    {
        CalibratedCamera found = CameraCalibration.Calibrate(Views(5)).ValueOrThrow();

        Assert.All(Enumerable.Range(0, 4), i => Assert.InRange(Math.Abs(found.Values[i] - s_published[i]), 0, 2 * found.StandardUncertainties[i]));
        Assert.InRange(found.StandardUncertainties[0], 0.2, 2);
        // k2 and k3 trade off: places are compared, not coefficients, where corners were seen.
        CameraModel published = new(new(640, 480), s_published[0], s_published[1], new(s_published[2], s_published[3]), new(s_published[4], s_published[5], s_published[6], s_published[7], s_published[8]));
        foreach (PixelPoint p in (PixelPoint[])[new(100, 80), new(540, 80), new(100, 400), new(540, 400), new(320, 60)])
            Assert.InRange(found.Camera.Ideal(p).DistanceTo(published.Ideal(p)), 0, 1.5);
    }

    [Fact]
    public void The_view_that_spoils_the_published_file_is_dropped_by_itself()
    {
        // With windows of 11 px the small squares of left02 pull the corners; the published file carries its 1.2 px.
        CalibratedCamera found = CameraCalibration.Calibrate(Views(11)).ValueOrThrow();

        DroppedView dropped = Assert.Single(found.Dropped);
        Assert.Equal("left02.jpg", dropped.Name);
        Assert.True(dropped.ResidualPx > 3 * dropped.OthersPx);
        Assert.Equal(12, found.Views.Count);
        Assert.InRange(Math.Abs(found.Camera.FocalX - s_published[0]), 0, 2.5);
    }

    private static BoardView[] Views(int window) => [.. s_photos.Select(name => View(name, window))];

    private static BoardView View(string name, int window)
    {
        using Mat grey = Cv2.ImRead(Path.Combine(Repository.Root, "tests", "MarkReader.Imaging.Tests", "OpenData", name), ImreadModes.Grayscale);
        Assert.True(Cv2.FindChessboardCorners(grey, new Size(Columns, Rows), out Point2f[] rough));
        Point2f[] corners = Cv2.CornerSubPix(grey, rough, new Size(window, window), new Size(-1, -1), new TermCriteria(CriteriaTypes.Eps | CriteriaTypes.MaxIter, 30, 0.1));
        return new(name, new(grey.Width, grey.Height), [.. corners.SelectMany((c, i) => BoardSighting.OfPoint(new(25 * (i % Columns), 25 * (i / Columns)), new(c.X, c.Y), 0.1, i))]);
    }
}
