using SkiaSharp;

namespace MarkReader.Drawing.Pictures;

/// <summary>A picture of something at a visit, on a white ground. Units: px at 96 dpi.</summary>
public interface IPicture
{
    /// <summary>The pictures are drawn for the width of a phone held upright; letters are then at least 12 px high.</summary>
    double Width { get; }

    double Height { get; }

    /// <summary>Draws on a canvas whose upper left corner is (0, 0).</summary>
    internal void Draw(SKCanvas canvas);
}
