using MarkReader.Quantities;
using MarkReader.Rendering.Specs;

namespace MarkReader.Rendering.Optics;

/// <summary>A pinhole camera with a distorting lens, in its pose over a card that may be slightly bent; exact in both directions.</summary>
/// <remarks>Photo points are in the contract's pixels: (0, 0) is the centre of the top-left pixel. The card lies in z = 0, z towards the viewer.</remarks>
public sealed class Camera : ICardProjection
{
    private readonly Vector3 _centre;
    private readonly Vector3 _right;
    private readonly Vector3 _down;
    private readonly Vector3 _ahead;
    private readonly CameraSpec _spec;
    private readonly double _px;
    private readonly double _py;
    private readonly double _curvature;
    private readonly (double Cos, double Sin) _bend;

    public Camera(CameraSpec spec, PoseSpec pose, double curvature = 0, double curveDegrees = 0)
    {
        _spec = spec;
        _px = ((spec.Width - 1) / 2.0) + spec.PrincipalX;
        _py = ((spec.Height - 1) / 2.0) + spec.PrincipalY;
        _curvature = curvature;
        double bend = Radians(curveDegrees);
        _bend = (Math.Cos(bend), Math.Sin(bend));

        double tilt = Radians(pose.TiltDegrees);
        double towards = Radians(pose.TiltTowardsDegrees);
        Vector3 normal = new(0, 0, 1);
        Vector3 sight = new(Math.Sin(tilt) * Math.Cos(towards), Math.Sin(tilt) * Math.Sin(towards), Math.Cos(tilt));
        _centre = spec.FocalLength / pose.PixelsPerMm * sight;

        (double s, double c) = Math.SinCos(Radians(pose.RollDegrees));
        (double X, double Y) aim = Undistort((pose.CentreX * spec.Width) - 0.5, (pose.CentreY * spec.Height) - 0.5);
        Vector3 ray = new Vector3(aim.X, aim.Y, 1).Unit();
        Vector3 axis = new(0, 0, 1);

        // Camera axes in the card frame: the inverse of (pointing · roll · look-at) applied to each camera axis.
        Vector3 InCard(Vector3 v)
        {
            Vector3 w = v.Turned(ray, axis);
            w = new((c * w.X) - (s * w.Y), (s * w.X) + (c * w.Y), w.Z);
            return new Vector3(w.X, -w.Y, -w.Z).Turned(normal, sight);
        }

        _right = InCard(new(1, 0, 0));
        _down = InCard(new(0, 1, 0));
        _ahead = InCard(new(0, 0, 1));
    }

    /// <summary>The camera's centre in the card frame, mm.</summary>
    public (double U, double V, double Z) Centre => (_centre.X, _centre.Y, _centre.Z);

    public PixelPoint ToPhoto(CardPoint point) => ToPhoto(point, 0);

    /// <summary>The photo point of a point that stands <paramref name="height"/> mm over the paper.</summary>
    public PixelPoint ToPhoto(CardPoint point, double height)
    {
        Vector3 d = InSpace(point, height) - _centre;
        double z = d.Dot(_ahead);
        double x = d.Dot(_right) / z;
        double y = d.Dot(_down) / z;
        (double sx, double sy) = Distort(x, y);
        return new((sx * _spec.FocalLength) + _px, (sy * _spec.FocalLength) + _py);
    }

    /// <summary>The card point seen at a photo point; not a number when the line of sight misses the plane.</summary>
    public CardPoint ToCard(PixelPoint point)
    {
        (double u, double v) = Intersect(point.X, point.Y);
        return new(u, v);
    }

    internal (double U, double V) Intersect(double px, double py)
    {
        (double x, double y) = Undistort(px, py);
        Vector3 d = (x * _right) + (y * _down) + _ahead;
        if (d.Z > -1e-6)
            return (double.NaN, double.NaN);
        double u = _centre.X - (_centre.Z / d.Z * d.X);
        double v = _centre.Y - (_centre.Z / d.Z * d.Y);
        if (_curvature == 0)
            return (u, v);

        double z = 0;
        for (int i = 0; i < 12; i++)
        {
            double along = (u * _bend.Cos) + (v * _bend.Sin);
            z = _curvature * along * along / 2;
            u = _centre.X + ((z - _centre.Z) / d.Z * d.X);
            v = _centre.Y + ((z - _centre.Z) / d.Z * d.Y);
        }

        double t = (u * _bend.Cos) + (v * _bend.Sin);
        double stretch = _curvature * _curvature * t * t * t / 6;
        return (u + (stretch * _bend.Cos), v + (stretch * _bend.Sin));
    }

    /// <summary>Paper to space: positions on a bent card are lengths along the paper, s = t + κ²t³/6 for the parabola z = κt²/2.</summary>
    private Vector3 InSpace(CardPoint p, double height)
    {
        if (_curvature == 0)
            return new(p.U, p.V, height);
        double s = (p.U * _bend.Cos) + (p.V * _bend.Sin);
        double t = s;
        for (int i = 0; i < 8; i++)
            t = s - (_curvature * _curvature * t * t * t / 6);
        return new(p.U + ((t - s) * _bend.Cos), p.V + ((t - s) * _bend.Sin), (_curvature * t * t / 2) + height);
    }

    private (double X, double Y) Distort(double x, double y)
    {
        double r2 = (x * x) + (y * y);
        double scale = 1 + (r2 * (_spec.K1 + (r2 * (_spec.K2 + (r2 * _spec.K3)))));
        return (
            (x * scale) + (2 * _spec.P1 * x * y) + (_spec.P2 * (r2 + (2 * x * x))),
            (y * scale) + (_spec.P1 * (r2 + (2 * y * y))) + (2 * _spec.P2 * x * y));
    }

    /// <summary>Undistorted direction (x/z, y/z) of a photo point, by Newton's method: on the radius first, and on both coordinates for a decentred lens.</summary>
    private (double X, double Y) Undistort(double px, double py)
    {
        double sx = (px - _px) / _spec.FocalLength;
        double sy = (py - _py) / _spec.FocalLength;
        (double x, double y) = Undistorted(sx, sy);
        if (_spec.P1 == 0 && _spec.P2 == 0)
            return (x, y);
        for (int i = 0; i < 8; i++)
        {
            (double dx, double dy) = Distort(x, y);
            (double ex, double ey) = (sx - dx, sy - dy);
            double r2 = (x * x) + (y * y);
            double scale = 1 + (r2 * (_spec.K1 + (r2 * (_spec.K2 + (r2 * _spec.K3)))));
            double slope = 2 * (_spec.K1 + (r2 * ((2 * _spec.K2) + (3 * r2 * _spec.K3))));
            double xx = scale + (slope * x * x) + (2 * _spec.P1 * y) + (6 * _spec.P2 * x);
            double xy = (slope * x * y) + (2 * _spec.P1 * x) + (2 * _spec.P2 * y);
            double yy = scale + (slope * y * y) + (6 * _spec.P1 * y) + (2 * _spec.P2 * x);
            double determinant = (xx * yy) - (xy * xy);
            x += ((yy * ex) - (xy * ey)) / determinant;
            y += ((xx * ey) - (xy * ex)) / determinant;
            // What is left after this step is its square.
            if (Math.Abs(ex) + Math.Abs(ey) < 1e-8)
                break;
        }

        return (x, y);
    }

    /// <summary>The direction that a centred lens shows at (x, y).</summary>
    private (double X, double Y) Undistorted(double x, double y)
    {
        if (_spec.K1 == 0 && _spec.K2 == 0 && _spec.K3 == 0)
            return (x, y);
        double distorted = Math.Sqrt((x * x) + (y * y));
        if (distorted < 1e-12)
            return (x, y);
        double r = distorted;
        for (int i = 0; i < 8; i++)
        {
            double r2 = r * r;
            double step = ((r * (1 + (r2 * (_spec.K1 + (r2 * (_spec.K2 + (r2 * _spec.K3))))))) - distorted)
                / (1 + (r2 * ((3 * _spec.K1) + (r2 * ((5 * _spec.K2) + (7 * r2 * _spec.K3))))));
            r -= step;
            // What is left after this step is its square.
            if (Math.Abs(step) < 1e-8)
                break;
        }

        return (x * r / distorted, y * r / distorted);
    }

    private static double Radians(double degrees) => degrees * Math.PI / 180;
}
