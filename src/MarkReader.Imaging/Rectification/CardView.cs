using MarkReader.Quantities;
using MathNet.Numerics.LinearAlgebra;

namespace MarkReader.Imaging.Rectification;

/// <summary>The fitted view of a card: a homography followed by radial lens distortion, with the covariance of its parameters.</summary>
/// <remarks>
/// Parameters: eight elements of the homography between normalised card coordinates (mm / half side) and normalised photo coordinates
/// ((px − centre) / half diagonal), the radial coefficient k1 (q = p·(1 + k1·|p|²); Brown, Photogrammetric Engineering 37, 1971), and the
/// growth of black areas in px (ink spread and blooming), which moves every edge outwards alike.
/// </remarks>
internal sealed class CardView : ICardProjection
{
    public const int ParameterCount = 10;

    public const int K1 = 8;

    public const int Growth = 9;

    private readonly double[] _p;
    private readonly double _half;
    private readonly double _cx;
    private readonly double _cy;
    private readonly double _radius;
    private readonly PhotoSize _size;

    private CardView(double[] parameters, double halfSide, PhotoSize size, Matrix<double>? covariance)
    {
        _p = parameters;
        _half = halfSide;
        _size = size;
        _cx = (size.Width - 1) / 2.0;
        _cy = (size.Height - 1) / 2.0;
        _radius = Math.Sqrt(((double)size.Width * size.Width) + ((double)size.Height * size.Height)) / 2;
        Covariance = covariance;
    }

    /// <summary>Covariance of the parameters; null before the fit.</summary>
    public Matrix<double>? Covariance { get; }

    public double GrowthPx => _p[Growth];

    public double RadialDistortion => _p[K1];

    public static CardView FromHomography(Homography h, double halfSide, PhotoSize size)
    {
        CardView frame = new(new double[ParameterCount], halfSide, size, null);
        // N · H · diag(half, half, 1), N the normalisation of the photo.
        double[,] m = new double[3, 3];
        for (int c = 0; c < 3; c++)
        {
            double s = c < 2 ? halfSide : 1;
            m[0, c] = (h[0, c] - (frame._cx * h[2, c])) * s / frame._radius;
            m[1, c] = (h[1, c] - (frame._cy * h[2, c])) * s / frame._radius;
            m[2, c] = h[2, c] * s;
        }

        double w = m[2, 2];
        double[] p = [m[0, 0] / w, m[0, 1] / w, m[0, 2] / w, m[1, 0] / w, m[1, 1] / w, m[1, 2] / w, m[2, 0] / w, m[2, 1] / w, 0, 0];
        return new(p, halfSide, size, null);
    }

    public CardView Moved(Vector<double> step)
    {
        double[] p = new double[ParameterCount];
        for (int i = 0; i < ParameterCount; i++)
            p[i] = _p[i] + step[i];
        return new(p, _half, _size, null);
    }

    public CardView WithCovariance(Matrix<double> covariance) => new(_p, _half, _size, covariance);

    public PixelPoint ToPhoto(CardPoint point)
    {
        (double x, double y) = Undistorted(point);
        double f = 1 + (_p[K1] * ((x * x) + (y * y)));
        return new(_cx + (_radius * f * x), _cy + (_radius * f * y));
    }

    public CardPoint ToCard(PixelPoint point)
    {
        double qx = (point.X - _cx) / _radius;
        double qy = (point.Y - _cy) / _radius;
        double q = Math.Sqrt((qx * qx) + (qy * qy));
        double r = q;
        for (int i = 0; i < 20; i++)
        {
            double slope = 1 + (3 * _p[K1] * r * r);
            if (slope < 0.1)
                break;
            double step = ((r * (1 + (_p[K1] * r * r))) - q) / slope;
            r -= step;
            if (Math.Abs(step) < 1e-14)
                break;
        }

        double f = q > 0 ? r / q : 1;
        (double x, double y) = (qx * f, qy * f);
        // Solve x·(h6 U + h7 V + 1) = h0 U + h1 V + h2 and the same for y.
        double a11 = _p[0] - (_p[6] * x), a12 = _p[1] - (_p[7] * x), b1 = x - _p[2];
        double a21 = _p[3] - (_p[6] * y), a22 = _p[4] - (_p[7] * y), b2 = y - _p[5];
        double det = (a11 * a22) - (a12 * a21);
        return new(_half * ((b1 * a22) - (a12 * b2)) / det, _half * ((a11 * b2) - (b1 * a21)) / det);
    }

    /// <summary>∂photo/∂card in px/mm: (xu, xv, yu, yv).</summary>
    public (double Xu, double Xv, double Yu, double Yv) Jacobian(CardPoint point)
    {
        double u = point.U / _half, v = point.V / _half;
        double w = (_p[6] * u) + (_p[7] * v) + 1;
        (double x, double y) = Undistorted(point);
        double xu = (_p[0] - (_p[6] * x)) / w, xv = (_p[1] - (_p[7] * x)) / w;
        double yu = (_p[3] - (_p[6] * y)) / w, yv = (_p[4] - (_p[7] * y)) / w;
        (double dxx, double dxy, double dyy) = DistortionJacobian(x, y);
        double s = _radius / _half;
        return (s * ((dxx * xu) + (dxy * yu)), s * ((dxx * xv) + (dxy * yv)), s * ((dxy * xu) + (dyy * yu)), s * ((dxy * xv) + (dyy * yv)));
    }

    /// <summary>∂(x, y)/∂parameters in px; growth moves no point, only edges.</summary>
    public (double[] X, double[] Y) ParameterJacobian(CardPoint point)
    {
        double u = point.U / _half, v = point.V / _half;
        double w = (_p[6] * u) + (_p[7] * v) + 1;
        (double x, double y) = Undistorted(point);
        (double dxx, double dxy, double dyy) = DistortionJacobian(x, y);
        double rho = (x * x) + (y * y);
        ReadOnlySpan<double> px = [u / w, v / w, 1 / w, 0, 0, 0, -x * u / w, -x * v / w];
        ReadOnlySpan<double> py = [0, 0, 0, u / w, v / w, 1 / w, -y * u / w, -y * v / w];
        double[] jx = new double[ParameterCount];
        double[] jy = new double[ParameterCount];
        for (int i = 0; i < 8; i++)
        {
            jx[i] = _radius * ((dxx * px[i]) + (dxy * py[i]));
            jy[i] = _radius * ((dxy * px[i]) + (dyy * py[i]));
        }

        jx[K1] = _radius * x * rho;
        jy[K1] = _radius * y * rho;
        return (jx, jy);
    }

    /// <summary>Covariance in the card frame (mm²) of a point whose place in the photo is exact: what the fit of the view leaves open.</summary>
    public Covariance2 ViewCovariance(CardPoint point)
    {
        Matrix<double> c = Covariance ?? throw new InvalidOperationException("The view was not fitted.");
        (double[] jx, double[] jy) = ParameterJacobian(point);
        Vector<double> x = Vector<double>.Build.Dense(jx), y = Vector<double>.Build.Dense(jy);
        Vector<double> cx = c * x, cy = c * y;
        return ToCard(point, new(Math.Max(0, x * cx), x * cy, Math.Max(0, y * cy)));
    }

    /// <summary>A covariance in the photo (px²) about the image of <paramref name="point"/>, carried to the card frame (mm²).</summary>
    public Covariance2 ToCard(CardPoint point, Covariance2 pixels)
    {
        (double xu, double xv, double yu, double yv) = Jacobian(point);
        double det = (xu * yv) - (xv * yu);
        return pixels.Transform(yv / det, -xv / det, -yu / det, xu / det);
    }

    /// <summary>Focal length of a phone's main camera, 28 mm on 36 mm of the longer side (common practice, no source), in half diagonals.</summary>
    public double UsualFocal => 28.0 / 36 * Math.Max(_size.Width, _size.Height) / _radius;

    /// <summary>Where a camera of this focal length (in half diagonals, principal point in the middle) must stand to see the card so.</summary>
    public CameraPlace CameraAt(double focal)
    {
        // H ~ K·[r1 r2 t] with K = diag(f, f, 1); columns per mm.
        Vector<double> a = Vector<double>.Build.Dense([_p[0] / focal / _half, _p[3] / focal / _half, _p[6] / _half]);
        Vector<double> b = Vector<double>.Build.Dense([_p[1] / focal / _half, _p[4] / focal / _half, _p[7] / _half]);
        Vector<double> t = Vector<double>.Build.Dense([_p[2] / focal, _p[5] / focal, 1]);
        double scale = 2 / (a.L2Norm() + b.L2Norm());
        Vector<double> r1 = a / a.L2Norm();
        Vector<double> r2 = b - (b.DotProduct(r1) * r1);
        r2 /= r2.L2Norm();
        Vector<double> r3 = Vector<double>.Build.Dense([(r1[1] * r2[2]) - (r1[2] * r2[1]), (r1[2] * r2[0]) - (r1[0] * r2[2]), (r1[0] * r2[1]) - (r1[1] * r2[0])]);
        t *= scale;
        return new(new(-r1.DotProduct(t), -r2.DotProduct(t)), Math.Abs(r3.DotProduct(t)));
    }

    private (double X, double Y) Undistorted(CardPoint point)
    {
        double u = point.U / _half, v = point.V / _half;
        double w = (_p[6] * u) + (_p[7] * v) + 1;
        return (((_p[0] * u) + (_p[1] * v) + _p[2]) / w, ((_p[3] * u) + (_p[4] * v) + _p[5]) / w);
    }

    private (double Xx, double Xy, double Yy) DistortionJacobian(double x, double y)
    {
        double k = _p[K1];
        double f = 1 + (k * ((x * x) + (y * y)));
        return (f + (2 * k * x * x), 2 * k * x * y, f + (2 * k * y * y));
    }
}
