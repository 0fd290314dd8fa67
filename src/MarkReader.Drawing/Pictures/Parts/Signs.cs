using MarkReader.Quantities;
using SkiaSharp;

namespace MarkReader.Drawing.Pictures.Parts;

/// <summary>The signs of near, far, aim and expected marks, told apart by shape as well as by colour.</summary>
internal static class Signs
{
    public const double Reach = 7;

    /// <summary>A circle with its centre.</summary>
    public static void Near(Ink ink, PixelPoint at, SKColor? colour = null)
    {
        ink.Circle(at, 6, new(colour ?? Ink.Blue, 2.2));
        ink.Disc(at, 1.3, colour ?? Ink.Blue);
    }

    /// <summary>A square with its centre.</summary>
    public static void Far(Ink ink, PixelPoint at, SKColor? colour = null)
    {
        ink.Path(Square(at, 5.5), new(colour ?? Ink.Vermilion, 2.2), closed: true);
        ink.Disc(at, 1.3, colour ?? Ink.Vermilion);
    }

    /// <summary>An upright cross.</summary>
    public static void Aim(Ink ink, PixelPoint at) => Aim(ink, at, 9);

    /// <param name="reach">Of its arms, px.</param>
    public static void Aim(Ink ink, PixelPoint at, double reach)
    {
        ink.Line(at + new PixelVector(-reach, 0), at + new PixelVector(reach, 0), new(Ink.Black, 2.4));
        ink.Line(at + new PixelVector(0, -reach), at + new PixelVector(0, reach), new(Ink.Black, 2.4));
    }

    /// <summary>A dot in a dashed ring, as wide as a symbol of the key.</summary>
    public static void Expected(Ink ink, PixelPoint at)
    {
        ink.Circle(at, 7, new(Ink.Green, 1.6, Dashed: true));
        ink.Disc(at, 2.2, Ink.Green);
    }

    public static PixelPoint[] Square(PixelPoint at, double r) =>
        [at + new PixelVector(-r, -r), at + new PixelVector(r, -r), at + new PixelVector(r, r), at + new PixelVector(-r, r)];
}
