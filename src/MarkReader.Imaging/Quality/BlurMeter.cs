using MarkReader.Cards;
using MarkReader.Imaging.Fitting;
using MarkReader.Imaging.Photos;
using MarkReader.Imaging.Rectification;
using MarkReader.Quantities;

namespace MarkReader.Imaging.Quality;

/// <summary>Measures the blur of a photo at the borders of the card's markers.</summary>
internal static class BlurMeter
{
    private const int MaxHalf = 20;
    private const int Lines = 7;

    /// <summary>Profiles lie in the middle of each border, so many mm apart at most.</summary>
    private const double Spread = 1;

    /// <summary>Standard deviation of the blur, px: the median over borders of one direction, for the direction that is blurred more; 0 when no border is seen.</summary>
    public static double Measure(GreyPhoto photo, RegisteredCard card)
    {
        PixelSampler pixels = new(photo.Pixels);
        double cell = card.Kind.Markers[0].Side / card.Kind.Markers[0].Pattern.CellsWithBorder;
        // The markers' borders come first, four to a marker.
        IEnumerable<PrintedEdge> borders = PrintedEdges.Of(card.Kind).Take(4 * card.Kind.Markers.Count);
        return borders
            .Select(edge => (Along: Math.Abs(edge.ToWhite.U) > 0.5, Sigma: Sigma(pixels, card.View, edge, cell)))
            .Where(b => b.Sigma is not null)
            .GroupBy(b => b.Along, b => b.Sigma!.Value)
            .Select(g => g.Median())
            .DefaultIfEmpty(0)
            .Max();
    }

    private static double? Sigma(PixelSampler pixels, CardView view, PrintedEdge edge, double cell)
    {
        CardVector along = edge.To - edge.From;
        CardPoint middle = edge.From + (0.5 * along);
        CardVector half = Math.Min(Spread, along.Magnitude / 3) / 2 / along.Magnitude * along;
        (PixelVector normal, double across, _) = view.Across(middle, along, edge.ToWhite);
        int reach = (int)Math.Min(MaxHalf, 0.85 * cell * across);
        if (reach < 3)
            return null;
        Span<double> profile = stackalloc double[(2 * reach) + 1];
        profile.Clear();
        for (int i = 0; i < Lines; i++)
        {
            PixelPoint p = view.ToPhoto(middle + ((((2.0 * i) + 1 - Lines) / Lines) * half));
            if (!pixels.Contains(p.X - (reach * normal.X), p.Y - (reach * normal.Y)) || !pixels.Contains(p.X + (reach * normal.X), p.Y + (reach * normal.Y)))
                return null;
            for (int s = -reach; s <= reach; s++)
                profile[s + reach] += pixels[p.X + (s * normal.X), p.Y + (s * normal.Y)] / Lines;
        }

        EdgeProfileFit.Result fit = EdgeProfileFit.Fit(profile, 1);
        return fit.Converged && fit.Step > 0.02 && Math.Abs(fit.Place) < 0.6 * reach ? fit.Sigma : null;
    }
}
