using MarkReader.Cards;
using MarkReader.Imaging.Fitting;
using MarkReader.Imaging.Photos;
using MarkReader.Imaging.Rectification;
using MarkReader.Quantities;
using MathNet.Numerics.LinearAlgebra;

namespace MarkReader.Imaging.Quality;

/// <summary>The light of the card's white paper around the free zone.</summary>
internal sealed class PaperLight
{
    /// <summary>Light this near to the brightest counts as clipped: 253 of 255 and more.</summary>
    public const double Clipped = 0.98;

    /// <summary>A white cell darker than this part of the median is covered or burnt.</summary>
    private const double LeastPart = 0.15;

    /// <summary>With fewer white cells than this no plane is fitted.</summary>
    private const int FewCells = 12;

    /// <summary>Paper darker than this part of the plane is shaded or dirty; the plane is fitted again without it, so often.</summary>
    private const double Shaded = 0.85;
    private const int Rounds = 5;

    /// <summary>At this place among all cells in order of light, one is taken to be in the light even when a shadow covers half the card; so are those with this part of its light.</summary>
    private const double LitPlace = 0.65, LitPart = 0.7;

    private readonly IReadOnlyList<(CardPoint Place, double Light)> _white;
    private readonly Vector<double> _plane;

    private PaperLight(double median, IReadOnlyList<(CardPoint Place, double Light)> white)
    {
        (Median, _white) = (median, white);
        _plane = Vector<double>.Build.Dense([Math.Log(Math.Max(1e-4, median)), 0, 0]);
        if (white.Count < FewCells)
            return;
        // A plane through all cells would lean into a shadow: it starts from those that are certainly in the light.
        double lit = white.Select(w => w.Light).Order().ElementAt((int)(LitPlace * white.Count));
        IReadOnlyList<(CardPoint Place, double Light)> bright = [.. white.Where(w => w.Light >= LitPart * lit)];
        for (int round = 0; round < Rounds && bright.Count >= FewCells; round++)
        {
            _plane = Fit(bright, 3, _ => 0);
            bright = [.. white.Where(w => w.Light >= Shaded * At(w.Place))];
        }
    }

    /// <summary>The median, 0 to 1.</summary>
    public double Median { get; }

    /// <summary>1 − darkest over brightest, between the 5 % and 95 % places of all white cells.</summary>
    public double Unevenness
    {
        get
        {
            double[] light = [.. _white.Select(w => w.Light).Order()];
            return light.Length < FewCells ? 0 : 1 - (light[light.Length / 20] / light[^((light.Length / 20) + 1)]);
        }
    }

    /// <summary>Logarithm of the ratio by which the paper's light changes at a straight line, beyond what fades evenly; 0 when either side shows too little paper.</summary>
    /// <param name="isBeyond">On which side of the line a point is.</param>
    public double StepAt(Func<CardPoint, bool> isBeyond)
    {
        int beyond = _white.Count(w => isBeyond(w.Place));
        return Math.Min(beyond, _white.Count - beyond) < FewCells ? 0 : Fit(_white, 4, p => isBeyond(p) ? 1 : 0)[3];
    }

    /// <summary>The light that white paper would have at a point out of any shadow: a plane through the logarithms of the light of the markers' and patches' white cells.</summary>
    public double At(CardPoint p) => Math.Exp(_plane[0] + (_plane[1] * p.U) + (_plane[2] * p.V));

    public static PaperLight Of(GreyPhoto photo, RegisteredCard card)
    {
        PixelSampler pixels = new(photo.Pixels);
        List<(CardPoint Place, double Light)> white = [];
        foreach (CardPoint place in WhiteCells(card.Kind))
        {
            PixelPoint p = card.View.ToPhoto(place);
            if (pixels.Contains(p.X, p.Y))
                white.Add((place, pixels[p.X, p.Y]));
        }

        double median = white.Count == 0 ? 0 : white.Select(w => w.Light).Median();
        return new(median, [.. white.Where(w => w.Light > 0 && w.Light >= LeastPart * median)]);
    }

    /// <summary>Part of the card's area that is clipped.</summary>
    public static double ClippedShare(GreyPhoto photo, RegisteredCard card)
    {
        const int Steps = 60;
        PixelSampler pixels = new(photo.Pixels);
        int clipped = 0, seen = 0;
        for (int i = 0; i < Steps * Steps; i++)
        {
            CardPoint place = new((((i % Steps) + 0.5) / Steps * card.Kind.OuterSide) - (card.Kind.OuterSide / 2), (((i / Steps) + 0.5) / Steps * card.Kind.OuterSide) - (card.Kind.OuterSide / 2));
            PixelPoint p = card.View.ToPhoto(place);
            if (!pixels.Contains(p.X, p.Y))
                continue;
            seen++;
            if (pixels[p.X, p.Y] >= Clipped)
                clipped++;
        }

        return seen == 0 ? 0 : (double)clipped / seen;
    }

    private static IEnumerable<CardPoint> WhiteCells(CardKind kind)
    {
        foreach (CardMarker marker in kind.Markers)
        {
            int cells = marker.Pattern.CellsWithBorder;
            double cell = marker.Side / cells;
            for (int i = 0; i < cells * cells; i++)
            {
                if (marker.Pattern.IsWhite(i % cells, i / cells))
                    yield return new(marker.Corners[0].U + (((i % cells) + 0.5) * cell), marker.Corners[0].V - (((i / cells) + 0.5) * cell));
            }
        }

        foreach (ChessPatch patch in kind.Patches)
        {
            for (int i = 0; i < patch.Columns * patch.Rows; i++)
            {
                if (!patch.IsBlack(i % patch.Columns, i / patch.Columns))
                    yield return patch.UpperLeft + new CardVector(((i % patch.Columns) + 0.5) * patch.Square, -((i / patch.Columns) + 0.5) * patch.Square);
            }
        }
    }

    // log light = a + b·u + c·v + d·side(u, v).
    private static Vector<double> Fit(IReadOnlyList<(CardPoint Place, double Light)> white, int columns, Func<CardPoint, double> side)
    {
        Matrix<double> design = Matrix<double>.Build.Dense(white.Count, columns, (i, j) => j switch
        {
            0 => 1,
            1 => white[i].Place.U,
            2 => white[i].Place.V,
            _ => side(white[i].Place),
        });
        return design.QR().Solve(Vector<double>.Build.Dense(white.Count, i => Math.Log(white[i].Light)));
    }
}
