using SkiaSharp;

namespace MarkReader.Drawing.Fonts;

/// <summary>The typefaces built into this assembly. Skia's Linux build without dependencies has no other fonts.</summary>
internal static class Faces
{
    private static readonly Lazy<SKTypeface> s_regular = new(() => Load("DejaVuSansCondensed.ttf"));
    private static readonly Lazy<SKTypeface> s_bold = new(() => Load("DejaVuSansCondensed-Bold.ttf"));

    public static SKTypeface Regular => s_regular.Value;

    public static SKTypeface Bold => s_bold.Value;

    /// <summary>A font whose advances are not rounded to whole units, at any size of the unit.</summary>
    public static SKFont Font(SKTypeface face, double size) =>
        new(face, (float)size) { Subpixel = true, LinearMetrics = true, Hinting = SKFontHinting.None };

    private static SKTypeface Load(string file)
    {
        using Stream stream = typeof(Faces).Assembly.GetManifestResourceStream("fonts/" + file)!;
        using SKData data = SKData.Create(stream);
        return SKTypeface.FromData(data) ?? throw new InvalidDataException($"{file} is not a font.");
    }
}
