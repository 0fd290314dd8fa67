using MarkReader.Cards;
using SkiaSharp;

namespace MarkReader.Drawing.Cards;

/// <summary>The card alone as a PNG: the outer corner of pixel (0, 0) is the card's upper left corner.</summary>
internal static class PngCard
{
    private const int FinePixelsPerMm = 40;
    private const int PixelsPerMm = 20;
    private const double FineUpTo = 100; // mm; a larger card would be a large picture

    public static int Resolution(CardKind kind) => kind.OuterSide <= FineUpTo ? FinePixelsPerMm : PixelsPerMm;

    public static byte[] Write(CardKind kind)
    {
        int scale = Resolution(kind);
        double side = kind.OuterSide * scale;
        int pixels = (int)Math.Round(side);
        if (Math.Abs(side - pixels) > 1e-9)
            throw new InvalidDataException($"The outer side of '{kind.Name}' is not a whole number of pixels at {scale} px/mm.");
        using SKBitmap bitmap = new(new SKImageInfo(pixels, pixels, SKColorType.Gray8, SKAlphaType.Opaque));
        using (SKCanvas canvas = new(bitmap))
        {
            canvas.Clear(SKColors.White);
            canvas.Translate(pixels / 2f, pixels / 2f);
            canvas.Scale(scale);
            CardArt.Draw(canvas, kind);
        }

        using SKData data = bitmap.Encode(SKEncodedImageFormat.Png, 100);
        return PngResolution.Add(data.ToArray(), scale * 1000);
    }
}
