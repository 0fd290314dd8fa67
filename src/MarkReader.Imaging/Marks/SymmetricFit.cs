using MarkReader.Imaging.Rectification;
using MarkReader.Quantities;

namespace MarkReader.Imaging.Marks;

/// <summary>Describes a mark as a free function of an elliptic radius plus a plane: its profile, size and shape, whatever they are.</summary>
/// <remarks>
/// No profile is assumed, so a soft burn, a ring and a hole are described alike. Gauss–Newton with the profile projected out (Golub and Pereyra,
/// SIAM J. Numer. Anal. 10, 1973); Tukey's biweight leaves out what is not symmetric, such as a stain on one side.
/// </remarks>
internal sealed partial class SymmetricFit
{
    private const int Sectors = 36;
    private const int Parameters = 6; // centre u, v; shape e1, e2; added plane gu, gv
    private const double Tukey = 4.685;

    private readonly double[] _u;
    private readonly double[] _v;
    private readonly double[] _d;
    private readonly double _window;
    private readonly double _binWidth;

    private SymmetricFit(List<(double U, double V, double D)> pixels, double window, double binWidth)
    {
        _u = [.. pixels.Select(p => p.U)];
        _v = [.. pixels.Select(p => p.V)];
        _d = [.. pixels.Select(p => p.D)];
        _window = window;
        _binWidth = binWidth;
    }

    /// <summary>Fits about <paramref name="start"/>; null when the fit leaves the spot or finds no symmetric mark.</summary>
    /// <param name="darkening">Darkening; NaN pixels are left out.</param>
    /// <param name="start">Rough centre, within about a third of the radius.</param>
    /// <param name="diameter">Rough diameter at half depth, mm.</param>
    public static SymmetricMark? Fit(ZoneMap darkening, CardPoint start, double diameter)
    {
        double radius = diameter / 2;
        double window = (1.55 * radius) + 0.7;
        double pixel = 1 / darkening.Grid.PixelsPerMm;
        List<(double, double, double)> pixels = Collect(darkening, start, window);
        if (pixels.Count < 60)
            return null;
        SymmetricFit fit = new(pixels, window, Math.Max(pixel, radius / 14));
        return fit.Run(start, radius)?.Finish(darkening);
    }

    /// <summary>How far from its centre a mark's halo is divided out, mm.</summary>
    public static double HaloReach(double diameter) => (1.5 * diameter) + 1.5;

    private static List<(double U, double V, double D)> Collect(ZoneMap map, CardPoint centre, double window)
    {
        ZoneGrid grid = map.Grid;
        // A little wider than the window: the centre moves during the fit.
        double reach = 1.25 * window * grid.PixelsPerMm;
        (double cx, double cy) = grid.ToPixel(centre);
        List<(double, double, double)> pixels = [];
        for (int y = Math.Max(0, (int)(cy - reach)); y <= Math.Min(grid.Size - 1, (int)(cy + reach) + 1); y++)
        {
            for (int x = Math.Max(0, (int)(cx - reach)); x <= Math.Min(grid.Size - 1, (int)(cx + reach) + 1); x++)
            {
                float d = map[x, y];
                if (float.IsNaN(d) || Square(x - cx) + Square(y - cy) > reach * reach)
                    continue;
                CardPoint p = grid.ToCard(x, y);
                pixels.Add((p.U, p.V, d));
            }
        }

        return pixels;
    }

    private Pass? Run(CardPoint start, double radius)
    {
        MarkForm form = new(start, default, 0, 0);
        Pass pass = new(this, form);
        for (int iteration = 0; iteration < 30; iteration++)
        {
            bool robust = iteration >= 4;
            pass = new(this, form);
            pass.Weigh(robust);
            if (pass.Step() is not { } step)
                return null;
            double limit = 0.25 * radius;
            double size = Math.Max(Math.Abs(step[0]), Math.Abs(step[1]));
            double damp = size > limit ? limit / size : 1;
            form = form.Moved(damp * step);
            if (form.Centre.DistanceTo(start) > 0.8 * radius + 0.2 || form.Shape.Elongation > 0.85)
                return null;
            if (robust && size < 1e-5)
                break;
        }

        pass = new(this, form);
        pass.Weigh(robust: true);
        return pass;
    }

    private static double Square(double x) => x * x;
}
