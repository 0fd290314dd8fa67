using MarkReader.Cameras.Boards;
using MarkReader.Cameras.Calibration;
using MarkReader.Cameras.Profiles;
using MarkReader.Imaging.Boards;
using MarkReader.Imaging.Pipeline;
using MarkReader.Quantities;
using MarkReader.Rendering.Sampling;
using MarkReader.Rendering.Specs;
using MarkReader.Scenes.Output;
using MarkReader.Scenes.Sampling;

namespace MarkReader.Trials.Cameras;

/// <summary>Random cameras calibrated from rendered photos of the board, against what they were rendered with.</summary>
internal static class CameraTrial
{
    /// <summary>Values beyond this many standard uncertainties are outside a 95 % interval.</summary>
    private const double K = Normal95.Factor;

    private const int Photos = 12;

    /// <summary>Calibrates <paramref name="count"/> cameras and prints how many true values lie inside their 95 % intervals.</summary>
    public static void Coverage(int count, int first, int width)
    {
        int[] inside = new int[CameraProfile.Parameters], stated = new int[CameraProfile.Parameters];
        double[] errors = new double[CameraProfile.Parameters];
        int failed = 0;
        for (int seed = first; seed < first + count; seed++)
        {
            Random random = new(seed);
            CameraSpec camera = BoardScene.Camera(random, width);
            if (Calibrate(camera, random, seed) is not { } found)
            {
                failed++;
                continue;
            }

            double[] truth = Truth(camera);
            for (int i = 0; i < truth.Length; i++)
            {
                double u = found.StandardUncertainties[i];
                // A term that the photos do not show is left out and has no interval.
                if (u == 0)
                    continue;
                double z = (found.Values[i] - truth[i]) / u;
                stated[i]++;
                errors[i] += z * z;
                if (Math.Abs(z) <= K)
                    inside[i]++;
            }

            if ((seed - first + 1) % 10 == 0)
                Print(seed - first + 1);
        }

        Print(count);

        void Print(int done)
        {
            int all = inside[..6].Sum(), of = stated[..6].Sum();
            Console.WriteLine(FormattableString.Invariant($"{done} cameras, {failed} failed: {all}/{of} = {(double)all / of:0.000} of fx, fy, cx, cy, k1, k2 inside; ")
                + string.Join(", ", Enumerable.Range(0, inside.Length).Select(i => FormattableString.Invariant($"{CalibratedCamera.Names[i]} {inside[i]}/{stated[i]} (rms z {Math.Sqrt(errors[i] / Math.Max(1, stated[i])):0.00})"))));
        }
    }

    /// <summary>Measures wide-lens scenes with a profile of the very lens from photos of the board, and without.</summary>
    public static void WideLens(int count, int first)
    {
        List<double> with = [], without = [];
        int covered = 0, marks = 0;
        for (int seed = first; seed < first + count; seed++)
        {
            SceneSpec scene = SceneSampler.Draw("wideLens", seed);
            scene = scene with { Output = scene.Output with { Format = PhotoFormat.Jpeg, Orientation = 1 } };
            Random random = new(seed);
            if (Calibrate(scene.Camera, random, seed) is not { } found)
            {
                Console.WriteLine($"wideLens {seed}: not calibrated");
                continue;
            }

            CameraTraits traits = new(found.Camera.Photo, null, null, 1, null);
            CameraProfile profile = CameraProfile.Of("trial", DateTimeOffset.UnixEpoch, traits, found);
            byte[] photo = Scene.Render(scene).Photo;
            foreach ((List<double> squares, CameraProfile? camera) in (ReadOnlySpan<(List<double>, CameraProfile?)>)[(with, profile), (without, null)])
            {
                if (!PhotoMeasurer.Measure(photo, new() { Camera = camera }).TryGet(out PhotoMeasurement? measured, out Failure? failure))
                {
                    Console.WriteLine($"wideLens {seed}: {failure}");
                    continue;
                }

                foreach (BurnSpec burn in scene.Burns)
                {
                    if (measured.Marks.MinBy(m => m.Centre.Point.DistanceTo(new(burn.U, burn.V))) is not { } mark || mark.Centre.Point.DistanceTo(new(burn.U, burn.V)) > 0.5)
                        continue;
                    CardVector error = mark.Centre.Point - new CardPoint(burn.U, burn.V);
                    squares.Add((error.U * error.U) + (error.V * error.V));
                    if (camera is null)
                        continue;
                    marks++;
                    if (mark.Centre.Covariance.MahalanobisSquared(error) <= Covariance2.ChiSquare95)
                        covered++;
                }
            }
        }

        Console.WriteLine(FormattableString.Invariant($"wideLens, {count} scenes: rms {Rms(with):0.0000} mm with the profile, {Rms(without):0.0000} mm without; {covered} of {marks} marks inside their 95 % ellipse with it"));
    }

    private static double Rms(List<double> squares) => Math.Sqrt(squares.Average());

    private static CalibratedCamera? Calibrate(CameraSpec camera, Random random, int seed)
    {
        List<BoardView> views = [];
        foreach (SceneSpec scene in BoardScene.Views(camera, random, Photos))
        {
            if (BoardMeasurer.Measure(Scene.Render(scene).Photo, $"photo {views.Count}").TryGet(out BoardPhoto? photo, out Failure? failure))
                views.Add(photo.View);
            else
                Console.WriteLine($"camera {seed}: {failure}");
        }

        if (CameraCalibration.Calibrate(views).TryGet(out CalibratedCamera? found, out Failure? wrong))
            return found;
        Console.WriteLine($"camera {seed}: {wrong}");
        return null;
    }

    private static double[] Truth(CameraSpec c) =>
    [
        c.FocalLength, c.FocalLength, ((c.Width - 1) / 2.0) + c.PrincipalX, ((c.Height - 1) / 2.0) + c.PrincipalY, c.K1, c.K2, c.K3, c.P1, c.P2,
    ];
}
