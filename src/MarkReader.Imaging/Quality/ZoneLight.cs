using MarkReader.Imaging.Fitting;
using MarkReader.Imaging.Rectification;
using MarkReader.Quantities;

namespace MarkReader.Imaging.Quality;

/// <summary>How the light falls on the free zone: glare, a shadow's edge.</summary>
internal sealed class ZoneLight
{
    /// <summary>Side of the blocks in which the zone is looked at, mm: smaller than a mark, larger than the tape's texture.</summary>
    private const double BlockSide = 0.8;

    /// <summary>No more blocks than this along a side: a large card's marks are large too.</summary>
    private const double MostBlocks = 40;

    /// <summary>Tape this much brighter than white paper would be there mirrors a lamp.</summary>
    private const double Mirrors = 1.25;

    /// <summary>A washed-out part whose middle is off the zone's by less than this part of the zone's half side lies on no side.</summary>
    private const double LeastOffset = 0.15;

    /// <summary>Logarithm of the least step that is looked at, about 10 %.</summary>
    private const double LeastStep = 0.1;

    /// <summary>Part of the zone's step that the paper has to show; a shadow that ends within the card shows less than all of it.</summary>
    private const double PaperShare = 0.4;

    private readonly double[,] _log;
    private readonly int _size;
    private readonly double _block;
    private readonly ZoneMap _blocks;
    private readonly double _half;

    /// <param name="light">The rectified zone, linear light.</param>
    /// <param name="zoneSide">Side of the free zone, mm.</param>
    public ZoneLight(ZoneMap light, double zoneSide)
    {
        _blocks = light.Reduce(light.Grid.Divisor((int)Math.Round(Math.Max(BlockSide, zoneSide / MostBlocks) * light.Grid.PixelsPerMm)));
        _size = _blocks.Grid.Size;
        _block = 1 / _blocks.Grid.PixelsPerMm;
        _half = zoneSide / 2;
        _log = new double[_size, _size];
        for (int y = 0; y < _size; y++)
        {
            for (int x = 0; x < _size; x++)
                _log[y, x] = _blocks[x, y] > 0 ? Math.Log(_blocks[x, y]) : double.NaN;
        }
    }

    public Glare Glare(PaperLight paper, CardView view)
    {
        int washed = 0, seen = 0;
        (double x, double y) = (0, 0);
        foreach ((CardPoint place, double light) in Blocks())
        {
            seen++;
            if (light < PaperLight.Clipped && light < Mirrors * paper.At(place))
                continue;
            washed++;
            PixelPoint p = view.ToPhoto(place);
            (x, y) = (x + p.X, y + p.Y);
        }

        if (washed == 0)
            return new(0, PhotoSide.Middle);
        PixelPoint middle = view.ToPhoto(CardPoint.Origin);
        (double xu, double xv, double yu, double yv) = view.Jacobian(CardPoint.Origin);
        double least = LeastOffset * _half * Math.Sqrt(Math.Abs((xu * yv) - (xv * yu)));
        return new((double)washed / seen, Side((x / washed) - middle.X, (y / washed) - middle.Y, least));
    }

    /// <summary>
    /// The strongest straight step of light across the zone, as darker over brighter side; 1 when there is none. Either side is the median of a
    /// band near the line, in three parts of the line, each of which has to show it: marks, pen lines and light that fades do not count.
    /// The white paper around the zone has to show the same step: an edge of the tape does not count either.
    /// </summary>
    public double ShadowStep(PaperLight paper)
    {
        double strongest = LeastStep;
        for (int angle = 0; angle < 18; angle++)
        {
            (double sin, double cos) = Math.SinCos(angle * Math.PI / 18);
            for (double offset = -0.6 * _half; offset <= 0.6 * _half; offset += _block)
            {
                double step = StepAt(cos, sin, offset), at = offset;
                if (Math.Abs(step) > strongest && paper.StepAt(p => (p.U * cos) + (p.V * sin) > at) / step > PaperShare)
                    strongest = Math.Abs(step);
            }
        }

        return strongest > LeastStep ? Math.Exp(-strongest) : 1;
    }

    private double StepAt(double cos, double sin, double offset)
    {
        const double Near = 1, Far = 3;
        List<double>[] below = [[], [], []], above = [[], [], []];
        for (int y = 0; y < _size; y++)
        {
            for (int x = 0; x < _size; x++)
            {
                CardPoint p = _blocks.Grid.ToCard(x, y);
                double across = (p.U * cos) + (p.V * sin) - offset, along = (p.V * cos) - (p.U * sin);
                if (double.IsNaN(_log[y, x]) || Math.Abs(across) is < Near or > Far || Math.Abs(p.U) > _half || Math.Abs(p.V) > _half)
                    continue;
                int part = along < -_half / 3 ? 0 : along < _half / 3 ? 1 : 2;
                (across < 0 ? below : above)[part].Add(_log[y, x]);
            }
        }

        double least = double.PositiveInfinity, sign = 0;
        for (int part = 0; part < 3; part++)
        {
            if (below[part].Count < 4 || above[part].Count < 4)
                return 0;
            double step = above[part].Median() - below[part].Median();
            if (sign != 0 && Math.Sign(step) != sign)
                return 0;
            sign = Math.Sign(step);
            least = Math.Min(least, Math.Abs(step));
        }

        return sign * least;
    }

    private IEnumerable<(CardPoint Place, double Light)> Blocks()
    {
        for (int y = 0; y < _size; y++)
        {
            for (int x = 0; x < _size; x++)
            {
                CardPoint place = _blocks.Grid.ToCard(x, y);
                if (!float.IsNaN(_blocks[x, y]) && Math.Abs(place.U) <= _half && Math.Abs(place.V) <= _half)
                    yield return (place, _blocks[x, y]);
            }
        }
    }

    private static PhotoSide Side(double dx, double dy, double least) => Math.Max(Math.Abs(dx), Math.Abs(dy)) < least
        ? PhotoSide.Middle
        : Math.Abs(dx) >= Math.Abs(dy)
            ? dx < 0 ? PhotoSide.Left : PhotoSide.Right
            : dy < 0 ? PhotoSide.Upper : PhotoSide.Lower;
}
