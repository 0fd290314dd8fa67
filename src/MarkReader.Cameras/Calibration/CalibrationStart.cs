using MarkReader.Cameras.Boards;
using MarkReader.Cameras.Models;
using MarkReader.Quantities;
using MathNet.Numerics.LinearAlgebra;

namespace MarkReader.Cameras.Calibration;

/// <summary>A first focal length and the poses in closed form, for square pixels and the axis in the photo's middle.</summary>
/// <remarks>Zhang, IEEE PAMI 22, 2000, sections 3.1 and Appendix A, reduced to one unknown.</remarks>
internal static class CalibrationStart
{
    /// <summary>Focal length over the longer side when the views do not tell: that of a phone's main camera (common practice, no source).</summary>
    private const double UsualFocal = 28.0 / 36;

    public static (CameraModel Camera, BoardPose[] Poses)? Of(IReadOnlyList<BoardView> views)
    {
        Matrix<double>?[] maps = [.. views.Select(v => PlaneMap.Fit(v.Sightings))];
        if (maps.Any(m => m is null))
            return null;
        PhotoSize size = views[0].Photo;
        (double cx, double cy) = ((size.Width - 1) / 2.0, (size.Height - 1) / 2.0);
        double focal = Focal([.. maps.Select(m => m!)], cx, cy, Math.Max(size.Width, size.Height));
        CameraModel camera = new(size, focal, focal, new(cx, cy), LensDistortion.None);
        return (camera, [.. maps.Select(m => Pose(m!, camera))]);
    }

    /// <summary>Where a known camera saw the board; null when the view does not show its plane.</summary>
    public static BoardPose? PoseOf(BoardView view, CameraModel camera)
    {
        BoardSighting[] seen = [.. view.Sightings.Select(s => s with { Seen = camera.Ideal(s.Seen) }).Where(s => double.IsFinite(s.Seen.X) && double.IsFinite(s.Seen.Y))];
        return PlaneMap.Fit(seen) is { } map ? Pose(map, camera) : null;
    }

    /// <summary>The columns of K⁻¹·H are square to each other and of one length: two equations for 1/f² a view.</summary>
    private static double Focal(Matrix<double>[] maps, double cx, double cy, int side)
    {
        double top = 0, bottom = 0;
        foreach (Matrix<double> h in maps)
        {
            (double ax, double ay, double az) = (h[0, 0] - (cx * h[2, 0]), h[1, 0] - (cy * h[2, 0]), side * h[2, 0]);
            (double bx, double by, double bz) = (h[0, 1] - (cx * h[2, 1]), h[1, 1] - (cy * h[2, 1]), side * h[2, 1]);
            double scale = (ax * ax) + (ay * ay) + (bx * bx) + (by * by);
            foreach ((double c, double d) in (ReadOnlySpan<(double, double)>)[
                (((ax * bx) + (ay * by)) / scale, az * bz / scale),
                (((ax * ax) + (ay * ay) - (bx * bx) - (by * by)) / scale, ((az * az) - (bz * bz)) / scale)])
            {
                // c·q + d = 0 with q = (side/f)².
                top -= c * d;
                bottom += c * c;
            }
        }

        double q = bottom > 0 ? top / bottom : 0;
        double focal = q > 0 ? side / Math.Sqrt(q) : 0;
        return focal > 0.3 * side && focal < 5 * side ? focal : UsualFocal * side;
    }

    private static BoardPose Pose(Matrix<double> h, CameraModel camera)
    {
        Vector<double> a = Ray(h.Column(0), camera), b = Ray(h.Column(1), camera), t = Ray(h.Column(2), camera);
        double scale = 2 / (a.L2Norm() + b.L2Norm());
        if (t[2] * scale < 0)
            scale = -scale;
        (a, b, t) = (a * scale, b * scale, t * scale);
        Vector<double> middle = (a / a.L2Norm()) + (b / b.L2Norm());
        Vector<double> difference = (a / a.L2Norm()) - (b / b.L2Norm());
        middle /= middle.L2Norm();
        difference -= difference.DotProduct(middle) * middle;
        difference /= difference.L2Norm();
        Vector<double> r1 = (middle + difference) / Math.Sqrt(2), r2 = (middle - difference) / Math.Sqrt(2);
        double[] r3 = [(r1[1] * r2[2]) - (r1[2] * r2[1]), (r1[2] * r2[0]) - (r1[0] * r2[2]), (r1[0] * r2[1]) - (r1[1] * r2[0])];
        return new([r1[0], r2[0], r3[0], r1[1], r2[1], r3[1], r1[2], r2[2], r3[2]], [t[0], t[1], t[2]]);
    }

    private static Vector<double> Ray(Vector<double> column, CameraModel camera) => Vector<double>.Build.Dense([
        (column[0] - (camera.Principal.X * column[2])) / camera.FocalX, (column[1] - (camera.Principal.Y * column[2])) / camera.FocalY, column[2]]);
}
