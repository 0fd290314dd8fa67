using MarkReader.Cards;
using MarkReader.Rendering.Specs;

namespace MarkReader.Rendering.Surfaces;

/// <summary>A sheet of paper with the ink of a card or board, at a place in the first card's frame.</summary>
internal sealed class PrintedCard
{
    private readonly InkRaster _ink;
    private readonly CardSpec _spec;
    private readonly double _halfWidth;
    private readonly double _halfHeight;
    private readonly (double U, double V, double Cos, double Sin) _place;
    private readonly int _seed;

    public PrintedCard(CardSpec spec, PlacedCardSpec? place, int seed)
    {
        string name = place?.Kind ?? spec.Kind;
        IPrint kind = (IPrint?)CardKinds.Find(name) ?? (name == CalibrationBoard.Sheet.Name ? CalibrationBoard.Sheet : null) ?? throw new ArgumentException($"There is no print '{name}'.", nameof(spec));
        _spec = spec;
        _seed = seed;
        _ink = new(kind, spec.InkSpread, spec.InkSoftness);
        (_halfWidth, _halfHeight) = ((kind.Width / 2) + spec.CutMargin, (kind.Height / 2) + spec.CutMargin);
        LargestEven = kind is CalibrationBoard ? 0.6 : 0.1;
        double turn = (place?.TurnDegrees ?? 0) * Math.PI / 180;
        _place = (place?.U ?? 0, place?.V ?? 0, Math.Cos(turn), Math.Sin(turn));
        Reach = Math.Max(Math.Abs(_place.U), Math.Abs(_place.V)) + (1.5 * Math.Max(_halfWidth, _halfHeight));
    }

    public double Reach { get; }

    /// <summary>Largest size of a pixel (mm) for which <see cref="IsEven"/> sees every edge that matters: a fraction of the print's squares.</summary>
    public double LargestEven { get; }

    /// <summary>Distance inside the paper's outline, mm; negative outside. Cut by hand: the sides are not quite straight.</summary>
    public double Inside(double u, double v)
    {
        (double cu, double cv) = Local(u, v);
        double inside = Math.Min(_halfWidth - Math.Abs(cu), _halfHeight - Math.Abs(cv));
        return inside is > -2 and < 2 ? inside + (0.12 * Noise.At(cu * 0.15, cv * 0.15, _seed + 3)) : inside;
    }

    public Rgb Paper(double u, double v)
    {
        (double cu, double cv) = Local(u, v);
        return Textures.Paper(cu, cv, _seed);
    }

    /// <summary>Whether the ink does not change within a square of side <paramref name="size"/> mm, or over its corners.</summary>
    public bool IsEven(double u, double v, double size)
    {
        float ink = Ink(u, v);
        double h = size * 0.75;
        return Same(Ink(u - h, v - h)) && Same(Ink(u + h, v - h)) && Same(Ink(u - h, v + h)) && Same(Ink(u + h, v + h));

        bool Same(float other) => Math.Abs(other - ink) < 0.001f;
    }

    /// <summary>The paper's albedo with the ink at a place.</summary>
    public Rgb Printed(Rgb paper, double u, double v)
    {
        float ink = Ink(u, v);
        return ink <= 0 ? paper : Rgb.Mix(paper, Rgb.Grey(_spec.InkAlbedo), ink);
    }

    private float Ink(double u, double v)
    {
        (double cu, double cv) = Local(u, v);
        return _ink.At(cu / _spec.PrintScaleU, cv / _spec.PrintScaleV);
    }

    private (double U, double V) Local(double u, double v)
    {
        double du = u - _place.U;
        double dv = v - _place.V;
        return ((du * _place.Cos) + (dv * _place.Sin), (dv * _place.Cos) - (du * _place.Sin));
    }
}
