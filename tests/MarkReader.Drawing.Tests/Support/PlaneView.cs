using MarkReader.Quantities;

namespace MarkReader.Drawing.Tests.Support;

/// <summary>A pinhole camera's view of the card's plane: a real homography with its inverse.</summary>
internal sealed class PlaneView : ICardProjection
{
    private readonly double[,] _forward;
    private readonly double[,] _back;

    private PlaneView(double[,] forward) => (_forward, _back) = (forward, Inverse(forward));

    /// <summary>A camera whose axis meets the card's centre, tilted about the photo's x axis after a turn of the card in its plane.</summary>
    public static PlaneView Of(PhotoSize photo, (double PixelsPerMm, double Tilt, double Turn) pose, (double X, double Y)? centre = null)
    {
        double f = 1.2 * photo.Width;
        double distance = f / pose.PixelsPerMm;
        (double cx, double cy) = centre ?? ((photo.Width - 1) / 2.0, (photo.Height - 1) / 2.0);
        (double st, double ct) = Math.SinCos(pose.Tilt * Math.PI / 180);
        (double sr, double cr) = Math.SinCos(pose.Turn * Math.PI / 180);
        // Camera axes: x right, y down, z away. (u, v) turned to (a, b); then x = a, y = −b·cos, z = distance + b·sin.
        double[] a = [cr, -sr, 0];
        double[] b = [sr, cr, 0];
        double[,] h = new double[3, 3];
        for (int i = 0; i < 3; i++)
        {
            double z = (st * b[i]) + (i == 2 ? distance : 0);
            h[0, i] = (f * a[i]) + (cx * z);
            h[1, i] = (-f * ct * b[i]) + (cy * z);
            h[2, i] = z;
        }

        return new(h);
    }

    public PixelPoint ToPhoto(CardPoint point)
    {
        (double x, double y) = Apply(_forward, point.U, point.V);
        return new(x, y);
    }

    public CardPoint ToCard(PixelPoint point)
    {
        (double u, double v) = Apply(_back, point.X, point.Y);
        return new(u, v);
    }

    private static (double A, double B) Apply(double[,] m, double a, double b)
    {
        double w = (m[2, 0] * a) + (m[2, 1] * b) + m[2, 2];
        return (((m[0, 0] * a) + (m[0, 1] * b) + m[0, 2]) / w, ((m[1, 0] * a) + (m[1, 1] * b) + m[1, 2]) / w);
    }

    private static double[,] Inverse(double[,] m)
    {
        double[,] inverse = new double[3, 3]; // the adjugate: its scale does not matter
        for (int i = 0; i < 3; i++)
        {
            for (int j = 0; j < 3; j++)
                inverse[j, i] = (m[(i + 1) % 3, (j + 1) % 3] * m[(i + 2) % 3, (j + 2) % 3]) - (m[(i + 1) % 3, (j + 2) % 3] * m[(i + 2) % 3, (j + 1) % 3]);
        }

        return inverse;
    }
}
