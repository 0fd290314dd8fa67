using MarkReader.Cameras.Models;
using MarkReader.Quantities;
using MathNet.Numerics.LinearAlgebra;

namespace MarkReader.Imaging.Rectification;

/// <summary>The fitted view of a card: its bend, a homography, and radial lens distortion, with the covariance of the parameters.</summary>
/// <remarks>
/// The card may be bent to z = A·U² + B·U·V + C·V² (mm towards the camera; U, V = mm / half side); a bent card's point is first carried along its
/// line of sight to the plane. Then come eight elements of the homography between normalised card coordinates and normalised photo
/// coordinates ((px − middle) / half diagonal), and the radial distortion q − c = (p − c)·(1 + k1·r² + k2·r⁴), r = |p − c| (Brown,
/// Photogrammetric Engineering 37, 1971). With a camera's profile, its lens comes last. The growth of black areas in px (ink spread and blooming) moves every edge outwards alike.
/// </remarks>
internal sealed class CardView : ICardProjection
{
    private readonly double[] _p;
    private readonly CardView?[] _shifted = new CardView?[2 * ViewParameters.Count];
    private readonly double _half;
    private readonly double _middleX;
    private readonly double _middleY;
    private readonly double _radius;
    private readonly double _focal;
    private readonly PhotoSize _size;
    private readonly CameraPlace _camera;
    private readonly CameraModel? _lens;

    private CardView(double[] parameters, double halfSide, PhotoSize size, double focal, CameraModel? lens, Matrix<double>? covariance)
    {
        _lens = lens;
        _p = parameters;
        _half = halfSide;
        _size = size;
        _middleX = (size.Width - 1) / 2.0;
        _middleY = (size.Height - 1) / 2.0;
        _radius = HalfDiagonal(size);
        _focal = focal;
        _camera = CameraPlace.Of(parameters, halfSide, focal * Math.Exp(parameters[ViewParameters.Focal]));
        Covariance = covariance;
    }

    /// <summary>Covariance of the parameters; null before the fit.</summary>
    public Matrix<double>? Covariance { get; }

    public double GrowthPx => _p[ViewParameters.Growth];

    /// <summary>Where the camera stood, as far as the focal length is right.</summary>
    public CameraPlace Camera => _camera;

    /// <summary>Largest distance of the card within its outline from a plane, mm.</summary>
    public double Sagitta => Math.Abs(_p[ViewParameters.Bend]) + Math.Abs(_p[ViewParameters.Bend + 1]) + Math.Abs(_p[ViewParameters.Bend + 2]);

    /// <summary>Half the card's side, mm.</summary>
    public double HalfSide => _half;

    /// <summary>Assumed focal length in half diagonals of the photo.</summary>
    public double Focal => _focal;

    /// <summary>The camera's profile for this photo; null when there is none. With it, the homography and the distortion are those of a pinhole's photo.</summary>
    public CameraModel? Lens => _lens;

    public IReadOnlyList<double> Parameters => [.. _p];

    public double this[int parameter] => _p[parameter];

    /// <summary>A view from parameters that were kept; without covariance.</summary>
    public static CardView FromParameters(double[] parameters, double halfSide, PhotoSize size, double focal, CameraModel? lens = null) => new(parameters, halfSide, size, focal, lens, null);

    /// <param name="h">Card (mm) to photo (px).</param>
    /// <param name="halfSide">Half the card's side, mm.</param>
    /// <param name="focal">Assumed focal length in half diagonals of the photo.</param>
    /// <param name="lens">The camera's profile for this photo.</param>
    public static CardView FromHomography(Homography h, double halfSide, PhotoSize size, double focal, CameraModel? lens = null)
    {
        // N · H · diag(half, half, 1), N the normalisation of the photo.
        (double cx, double cy, double radius) = ((size.Width - 1) / 2.0, (size.Height - 1) / 2.0, HalfDiagonal(size));
        double[,] m = new double[3, 3];
        for (int c = 0; c < 3; c++)
        {
            double s = c < 2 ? halfSide : 1;
            m[0, c] = (h[0, c] - (cx * h[2, c])) * s / radius;
            m[1, c] = (h[1, c] - (cy * h[2, c])) * s / radius;
            m[2, c] = h[2, c] * s;
        }

        double w = m[2, 2];
        double[] p = new double[ViewParameters.Count];
        ReadOnlySpan<double> elements = [m[0, 0] / w, m[0, 1] / w, m[0, 2] / w, m[1, 0] / w, m[1, 1] / w, m[1, 2] / w, m[2, 0] / w, m[2, 1] / w];
        elements.CopyTo(p);
        return new(p, halfSide, size, focal, lens, null);
    }

    public CardView Moved(Vector<double> step)
    {
        double[] p = new double[ViewParameters.Count];
        for (int i = 0; i < p.Length; i++)
            p[i] = _p[i] + step[i];
        return new(p, _half, _size, _focal, _lens, null);
    }

    public CardView WithCovariance(Matrix<double> covariance) => new(_p, _half, _size, _focal, _lens, covariance);

    public PixelPoint ToPhoto(CardPoint point)
    {
        CardPoint flat = OnPlane(point);
        double u = flat.U / _half, v = flat.V / _half;
        double w = (_p[6] * u) + (_p[7] * v) + 1;
        double dx = (((_p[0] * u) + (_p[1] * v) + _p[2]) / w) - _p[ViewParameters.CentreX];
        double dy = (((_p[3] * u) + (_p[4] * v) + _p[5]) / w) - _p[ViewParameters.CentreY];
        double r2 = (dx * dx) + (dy * dy);
        double f = 1 + (r2 * (_p[ViewParameters.K1] + (_p[ViewParameters.K2] * r2)));
        PixelPoint seen = new(_middleX + (_radius * (_p[ViewParameters.CentreX] + (f * dx))), _middleY + (_radius * (_p[ViewParameters.CentreY] + (f * dy))));
        return _lens is null ? seen : _lens.Shown(seen);
    }

    public CardPoint ToCard(PixelPoint point)
    {
        (double x, double y) = Undistorted(point);
        // Solve x·(h6 U + h7 V + 1) = h0 U + h1 V + h2 and the same for y.
        double a11 = _p[0] - (_p[6] * x), a12 = _p[1] - (_p[7] * x), b1 = x - _p[2];
        double a21 = _p[3] - (_p[6] * y), a22 = _p[4] - (_p[7] * y), b2 = y - _p[5];
        double det = (a11 * a22) - (a12 * a21);
        CardPoint flat = new(_half * ((b1 * a22) - (a12 * b2)) / det, _half * ((a11 * b2) - (b1 * a21)) / det);
        if (Sagitta == 0)
            return flat;
        // The bend moves points by little: a fixed-point iteration gains two digits a round, less on a card that is bent and seen from aside.
        CardPoint p = flat;
        for (int i = 0; i < 40; i++)
        {
            CardPoint next = flat + (p - OnPlane(p));
            bool still = next.DistanceTo(p) < 1e-12;
            p = next;
            if (still)
                break;
        }

        return p;
    }

    /// <summary>How far another view shows the corners, the sides' middles and the centre of the card from where this one does, px.</summary>
    public double LargestMove(CardView other) => Enumerable.Range(0, 9)
        .Select(i => new CardPoint(_half * ((i % 3) - 1), _half * ((i / 3) - 1)))
        .Max(p => ToPhoto(p).DistanceTo(other.ToPhoto(p)));

    /// <summary>∂photo/∂card in px/mm: (xu, xv, yu, yv).</summary>
    public (double Xu, double Xv, double Yu, double Yv) Jacobian(CardPoint point)
    {
        const double Step = 0.02; // mm; the map is smooth over centimetres
        PixelPoint right = ToPhoto(point + new CardVector(Step, 0)), left = ToPhoto(point - new CardVector(Step, 0));
        PixelPoint up = ToPhoto(point + new CardVector(0, Step)), down = ToPhoto(point - new CardVector(0, Step));
        return ((right.X - left.X) / (2 * Step), (up.X - down.X) / (2 * Step), (right.Y - left.Y) / (2 * Step), (up.Y - down.Y) / (2 * Step));
    }

    /// <summary>A printed edge in the photo: the unit vector across it towards white, the px that one mm across it takes, and the px of <paramref name="along"/>.</summary>
    /// <param name="at">A point of the edge.</param>
    /// <param name="along">Direction of the edge on the card, of any length.</param>
    /// <param name="toWhite">Unit vector on the card across the edge, from black to white.</param>
    public (PixelVector Normal, double PixelsAcross, double PixelsAlong) Across(CardPoint at, CardVector along, CardVector toWhite)
    {
        (double xu, double xv, double yu, double yv) = Jacobian(at);
        PixelVector line = new((xu * along.U) + (xv * along.V), (yu * along.U) + (yv * along.V));
        PixelVector white = new((xu * toWhite.U) + (xv * toWhite.V), (yu * toWhite.U) + (yv * toWhite.V));
        double length = line.Magnitude;
        PixelVector normal = (1 / length) * new PixelVector(-line.Y, line.X);
        double scale = (normal.X * white.X) + (normal.Y * white.Y);
        return scale < 0 ? (-1 * normal, -scale, length) : (normal, scale, length);
    }

    /// <summary>∂(x, y)/∂parameters in px, by central differences; growth moves no point, only edges.</summary>
    public (double[] X, double[] Y) ParameterJacobian(CardPoint point)
    {
        double[] x = new double[ViewParameters.Count];
        double[] y = new double[ViewParameters.Count];
        for (int i = 0; i < x.Length; i++)
        {
            if (i == ViewParameters.Growth)
                continue;
            double step = ViewParameters.DifferenceStep(i);
            PixelPoint after = Shifted(i, step).ToPhoto(point), before = Shifted(i, -step).ToPhoto(point);
            (x[i], y[i]) = ((after.X - before.X) / (2 * step), (after.Y - before.Y) / (2 * step));
        }

        return (x, y);
    }

    /// <summary>Covariance in the card frame (mm²) of a point whose place in the photo is exact: what the fit of the view leaves open.</summary>
    public Covariance2 ViewCovariance(CardPoint point)
    {
        Matrix<double> c = Covariance ?? throw new InvalidOperationException("The view was not fitted.");
        (double[] jx, double[] jy) = ParameterJacobian(point);
        Vector<double> x = Vector<double>.Build.Dense(jx), y = Vector<double>.Build.Dense(jy);
        Vector<double> cx = c * x, cy = c * y;
        (double xx, double yy) = (Math.Max(0, x * cx), Math.Max(0, y * cy));
        double bound = Math.Sqrt(xx * yy);
        return ToCard(point, new(xx, Math.Clamp(x * cy, -bound, bound), yy));
    }

    /// <summary>A covariance in the photo (px²) about the image of <paramref name="point"/>, carried to the card frame (mm²).</summary>
    public Covariance2 ToCard(CardPoint point, Covariance2 pixels)
    {
        (double xu, double xv, double yu, double yv) = Jacobian(point);
        double det = (xu * yv) - (xv * yu);
        return pixels.Transform(yv / det, -xv / det, -yu / det, xu / det);
    }

    private static double HalfDiagonal(PhotoSize size) => Math.Sqrt(((double)size.Width * size.Width) + ((double)size.Height * size.Height)) / 2;

    /// <summary>Where a point of the bent card is seen on the plane z = 0.</summary>
    private CardPoint OnPlane(CardPoint p)
    {
        if (Sagitta == 0)
            return p;
        (double a, double b, double c) = (_p[ViewParameters.Bend], _p[ViewParameters.Bend + 1], _p[ViewParameters.Bend + 2]);
        double u = p.U / _half, v = p.V / _half;
        double z = (a * u * u) + (b * u * v) + (c * v * v);
        // Paper keeps its length: along a bend of curvature κ the coordinate s shrinks to s − κ²s³/6, and z = κs²/2.
        double slopeU = ((2 * a * u) + (b * v)) / _half, slopeV = ((b * u) + (2 * c * v)) / _half;
        CardPoint shortened = new(p.U - (slopeU * z / 3), p.V - (slopeV * z / 3));
        return _camera.OnPlane(shortened, z);
    }

    private (double X, double Y) Undistorted(PixelPoint point)
    {
        if (_lens is not null)
            point = _lens.Ideal(point);
        (double cx, double cy) = (_p[ViewParameters.CentreX], _p[ViewParameters.CentreY]);
        double qx = ((point.X - _middleX) / _radius) - cx;
        double qy = ((point.Y - _middleY) / _radius) - cy;
        double q = Math.Sqrt((qx * qx) + (qy * qy));
        (double k1, double k2) = (_p[ViewParameters.K1], _p[ViewParameters.K2]);
        double r = q;
        for (int i = 0; i < 20; i++)
        {
            double r2 = r * r;
            double slope = 1 + (r2 * ((3 * k1) + (5 * k2 * r2)));
            if (slope < 0.1)
                break;
            double step = ((r * (1 + (r2 * (k1 + (k2 * r2))))) - q) / slope;
            r -= step;
            if (Math.Abs(step) < 1e-14)
                break;
        }

        double f = q > 0 ? r / q : 1;
        return (cx + (qx * f), cy + (qy * f));
    }

    private CardView Shifted(int parameter, double step)
    {
        int slot = (2 * parameter) + (step > 0 ? 1 : 0);
        if (_shifted[slot] is { } ready)
            return ready;
        double[] p = [.. _p];
        p[parameter] += step;
        return _shifted[slot] = new(p, _half, _size, _focal, _lens, null);
    }
}
