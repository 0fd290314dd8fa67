using MarkReader.Cameras.Boards;
using MarkReader.Cameras.Models;
using MarkReader.Quantities;

namespace MarkReader.Cameras.Calibration;

/// <summary>The residual of one sighting and its derivatives by the shared parameters and by those of its view.</summary>
internal static class SightingRow
{
    /// <summary>Turn (3), move (3) and growth of black.</summary>
    public const int OfView = Growth + GrowthField.Count;

    /// <summary>The first of the growth's.</summary>
    public const int Growth = 6;

    /// <summary>Seen minus predicted along the sighting's direction, px; not a number for a point behind the camera.</summary>
    /// <param name="fault">How far the printed edge is out of its place towards white, mm.</param>
    /// <param name="shared">Filled with <see cref="Globals.Count"/> derivatives of the prediction.</param>
    /// <param name="view">Filled with <see cref="OfView"/> derivatives of the prediction.</param>
    public static double Fill(BoardSighting s, Globals globals, BoardPose pose, GrowthField growth, double fault, Span<double> shared, Span<double> view)
    {
        CameraModel camera = globals.Camera;
        LensDistortion lens = camera.Lens;
        CardPoint printed = s.At + (fault * s.Across);
        (double px, double py, double pz) = globals.Shape.InSpace(printed, s.Across);
        (double rx, double ry, double rz) = pose.Turned(px, py, pz);
        (double ox, double oy, double oz) = pose.Origin;
        double z = rz + oz;
        if (!(z > 1e-6))
            return double.NaN;
        double x = (rx + ox) / z, y = (ry + oy) / z;
        (double u, double v) = lens.Distort(x, y);
        double fx = s.Along.X * camera.FocalX, fy = s.Along.Y * camera.FocalY;
        double residual = (s.Along.X * (s.Seen.X - camera.Principal.X)) + (s.Along.Y * (s.Seen.Y - camera.Principal.Y)) - (fx * u) - (fy * v);

        double r2 = (x * x) + (y * y);
        double radial = (fx * x) + (fy * y);
        shared[Globals.FocalX] = s.Along.X * u;
        shared[Globals.FocalY] = s.Along.Y * v;
        shared[Globals.PrincipalX] = s.Along.X;
        shared[Globals.PrincipalY] = s.Along.Y;
        shared[Globals.K1] = radial * r2;
        shared[Globals.K2] = radial * r2 * r2;
        shared[Globals.K3] = radial * r2 * r2 * r2;
        shared[Globals.P1] = (fx * 2 * x * y) + (fy * (r2 + (2 * y * y)));
        shared[Globals.P2] = (fx * (r2 + (2 * x * x))) + (fy * 2 * x * y);

        // By the point in the camera frame: the direction's derivative carried through the lens.
        (double xx, double xy, double yx, double yy) = lens.Slope(x, y);
        double ax = (fx * xx) + (fy * yx), ay = (fx * xy) + (fy * yy);
        double gx = ax / z, gy = ay / z, gz = -((ax * x) + (ay * y)) / z;
        view[0] = (ry * gz) - (rz * gy);
        view[1] = (rz * gx) - (rx * gz);
        view[2] = (rx * gy) - (ry * gx);
        view[3] = gx;
        view[4] = gy;
        view[5] = gz;
        if (s.IsEdge)
            residual -= growth.At(s.Seen, s.Along, view[Growth..]);
        else
            view[Growth..].Clear();

        CardPoint at = printed + (globals.Shape.Spread * s.Across);
        double byU = (gx * pose[0, 0]) + (gy * pose[1, 0]) + (gz * pose[2, 0]);
        double byV = (gx * pose[0, 1]) + (gy * pose[1, 1]) + (gz * pose[2, 1]);
        double byZ = (gx * pose[0, 2]) + (gy * pose[1, 2]) + (gz * pose[2, 2]);
        BoardShape shape = globals.Shape;
        CardPoint paper = shape.OnPaper(at);
        (double paperU, double paperV) = shape.ToPaper(paper, byU, byV, byZ);
        CardPoint across = shape.OnPaper(new(s.Across.U, s.Across.V));
        shared[Globals.Spread] = (paperU * across.U) + (paperV * across.V);
        shared[Globals.Stretch] = ((paperU * at.U) - (paperV * at.V)) / 2;
        shared[Globals.Skew] = ((paperU * at.V) + (paperV * at.U)) / 2;
        (shared[Globals.Bend], shared[Globals.Bend + 1], shared[Globals.Bend + 2]) = shape.ToBend(paper, byU, byV, byZ);
        return residual;
    }
}
