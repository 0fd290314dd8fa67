using System.Globalization;
using System.Text;
using System.Xml.Linq;
using MarkReader.Drawing.Fonts;
using SkiaSharp;

namespace MarkReader.Drawing.Pictures;

/// <summary>Writes a picture.</summary>
public static class PictureFile
{
    // Lengths of texts are given, so that a browser without this font keeps them in their places.
    private const string Fonts = "'DejaVu Sans Condensed','DejaVu Sans',Verdana,sans-serif";

    private static readonly XNamespace s_svg = "http://www.w3.org/2000/svg";

    /// <summary>An SVG with a view box of the picture's size.</summary>
    public static byte[] Svg(IPicture picture)
    {
        ArgumentNullException.ThrowIfNull(picture);
        using MemoryStream stream = new();
        using (SKCanvas canvas = SKSvgCanvas.Create(SKRect.Create((float)picture.Width, (float)picture.Height), stream))
            picture.Draw(canvas);
        XElement svg = XElement.Parse(Encoding.UTF8.GetString(stream.ToArray()));
        svg.SetAttributeValue("viewBox", string.Create(CultureInfo.InvariantCulture, $"0 0 {picture.Width:0.##} {picture.Height:0.##}"));
        foreach (XElement text in svg.Descendants(s_svg + "text"))
            Settle(text);
        return Encoding.UTF8.GetBytes(svg.ToString(SaveOptions.DisableFormatting) + "\n");
    }

    /// <summary>A PNG with <paramref name="scale"/> pixels to the unit.</summary>
    public static byte[] Png(IPicture picture, double scale)
    {
        ArgumentNullException.ThrowIfNull(picture);
        (int width, int height) = ((int)Math.Ceiling(picture.Width * scale), (int)Math.Ceiling(picture.Height * scale));
        using SKBitmap bitmap = new(new SKImageInfo(width, height, SKColorType.Rgba8888, SKAlphaType.Opaque));
        using (SKCanvas canvas = new(bitmap))
        {
            canvas.Scale((float)scale);
            picture.Draw(canvas);
        }

        using SKData data = bitmap.Encode(SKEncodedImageFormat.Png, 100);
        return data.ToArray();
    }

    // Skia gives a place to every letter, which another font's letters do not fit.
    private static void Settle(XElement text)
    {
        float size = float.Parse(text.Attribute("font-size")!.Value, CultureInfo.InvariantCulture);
        bool bold = text.Attribute("font-weight")?.Value is { } weight && weight is not ("normal" or "400");
        text.Value = text.Value.Trim(); // it comes indented, which counts as spaces
        using SKFont font = Faces.Font(bold ? Faces.Bold : Faces.Regular, size);
        text.SetAttributeValue("x", First(text.Attribute("x")!.Value));
        text.SetAttributeValue("y", First(text.Attribute("y")!.Value));
        text.SetAttributeValue("textLength", font.MeasureText(text.Value).ToString("0.##", CultureInfo.InvariantCulture));
        text.SetAttributeValue("lengthAdjust", "spacingAndGlyphs");
        text.SetAttributeValue("font-family", Fonts);
    }

    private static string First(string places) => places.Split(',', ' ')[0];
}
