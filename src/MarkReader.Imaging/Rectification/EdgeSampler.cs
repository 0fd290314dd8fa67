using MarkReader.Cards;
using MarkReader.Imaging.Photos;
using MarkReader.Quantities;

namespace MarkReader.Imaging.Rectification;

/// <summary>Looks for every printed edge near where the view predicts it, in sections of about a millimetre.</summary>
internal sealed class EdgeSampler(GreyPhoto photo, IPrint print)
{
    /// <summary>Most samples on either side of an edge.</summary>
    private const int MaxHalf = 16;

    /// <summary>Most scan lines averaged into one profile.</summary>
    private const int MaxLines = 24;

    /// <summary>Light that counts as clipped, of full scale: white that would have been brighter moves the edge towards black.</summary>
    private const double Clipped = 0.95;

    /// <summary>Variance by which that may have moved it, px².</summary>
    private const double ClippedVariance = 0.09;

    /// <summary>Reach of a sharp photo's blur, px: nearer to the next edge a profile shows that one, too.</summary>
    private const double Blur = 3;

    private readonly IReadOnlyList<PrintedEdge> _edges = PrintedEdges.Of(print);
    private readonly PixelSampler _pixels = new(photo.Pixels);

    /// <summary>Nearest other edge on the card, mm: a marker's border is one cell wide.</summary>
    private readonly double _clearance = print.Markers[0].Side / print.Markers[0].Pattern.CellsWithBorder;

    /// <param name="view">Where edges are predicted.</param>
    /// <param name="reach">Half width of the search in cells of a marker (at most 0.8).</param>
    /// <param name="light">The fall of the light, to be taken out, and edges located from the pixels themselves; null: neither, and profiles may reach into the blur of the next edge.</param>
    public List<EdgeMeasurement> Measure(CardView view, double reach, LightField? light = null)
    {
        List<EdgeMeasurement> found = [];
        Span<double> profile = stackalloc double[(4 * MaxHalf) + 1];
        Span<double> pixels = stackalloc double[PixelProfile.Room(MaxHalf)];
        for (int index = 0; index < _edges.Count; index++)
        {
            PrintedEdge edge = _edges[index];
            CardVector whole = edge.To - edge.From;
            double length = whole.Magnitude;
            double margin = 0.35 * _clearance;
            int sections = Math.Max(1, (int)Math.Round((length - (2 * margin)) / (0.9 * _clearance)));
            double section = (length - (2 * margin)) / sections;
            CardVector unit = (1 / length) * whole;
            for (int s = 0; s < sections; s++)
            {
                CardPoint middle = edge.From + ((margin + ((s + 0.5) * section)) * unit);
                if (MeasureSection(view, edge, middle, (section / 2) * unit, index, reach, light, profile, pixels) is { } m)
                    found.Add(m);
            }
        }

        return found;
    }

    private EdgeMeasurement? MeasureSection(CardView view, PrintedEdge edge, CardPoint middle, CardVector halfSection, int index, double reach, LightField? light, Span<double> buffer, Span<double> pixels)
    {
        (PixelVector normal, double across, double halfPx) = view.Across(middle, halfSection, edge.ToWhite);
        double sectionPx = 2 * halfPx;
        if (sectionPx < 3)
            return null;
        double half = Math.Min(MaxHalf, reach * _clearance * across);
        if (light is not null)
            half = Math.Min(half, (_clearance * across) - Blur);
        if (half < 2)
            return null;
        double step = half > 8 ? 1 : 0.5;
        int samples = (2 * (int)(half / step)) + 1;
        int lines = Math.Clamp((int)sectionPx, 3, MaxLines);
        Span<double> profile = buffer[..samples];
        if (!Average(view, middle, halfSection, normal, step, lines, profile))
            return null;
        bool clipped = profile[^1] > Clipped || profile[^2] > Clipped;
        double extent = step * (samples - 1) / 2;
        double slope = light?.Slope(view.ToPhoto(middle), normal) ?? 0;
        for (int i = 0; slope != 0 && i < samples; i++)
            profile[i] /= 1 + (slope * ((i * step) - extent));
        EdgeProfileFit.Result fit = EdgeProfileFit.Fit(profile, step);
        if (!Found(fit, extent))
            return null;
        if (light is not null)
        {
            PixelPoint at = view.ToPhoto(middle), one = view.ToPhoto(middle + halfSection), other = view.ToPhoto(middle + (-1 * halfSection));
            double sagitta = ((((one.X + other.X) / 2) - at.X) * normal.X) + ((((one.Y + other.Y) / 2) - at.Y) * normal.Y);
            PixelProfile bins = new(pixels);
            bins.Fill(_pixels, at, halfPx, sagitta, normal, extent);
            bins.Level(slope);
            fit = EdgeProfileFit.Refine(bins.Places, bins.Values, bins.Weights, extent, fit);
            if (!Found(fit, extent))
                return null;
        }

        return new(middle, normal, fit.Place, fit.Variance + (clipped ? ClippedVariance : 0), fit.White, index);
    }

    private static bool Found(EdgeProfileFit.Result fit, double extent) => fit.Converged && fit.Step >= 0.02 && Math.Abs(fit.Place) <= 0.6 * extent && fit.Sigma <= 0.8 * extent;

    private bool Average(CardView view, CardPoint middle, CardVector halfSection, PixelVector normal, double step, int lines, Span<double> profile)
    {
        profile.Clear();
        double half = step * (profile.Length - 1) / 2;
        for (int line = 0; line < lines; line++)
        {
            double t = ((2 * line) + 1 - lines) / (double)lines;
            PixelPoint p = view.ToPhoto(middle + (t * halfSection));
            double x = p.X - (half * normal.X), y = p.Y - (half * normal.Y);
            if (!_pixels.Contains(x, y) || !_pixels.Contains(p.X + (half * normal.X), p.Y + (half * normal.Y)))
                return false;
            for (int i = 0; i < profile.Length; i++, x += step * normal.X, y += step * normal.Y)
                profile[i] += _pixels[x, y];
        }

        for (int i = 0; i < profile.Length; i++)
            profile[i] /= lines;
        return true;
    }
}
