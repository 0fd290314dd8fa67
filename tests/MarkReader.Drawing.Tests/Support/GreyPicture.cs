using SixLabors.ImageSharp;
using SixLabors.ImageSharp.PixelFormats;

namespace MarkReader.Drawing.Tests.Support;

/// <summary>A grey picture, 0 black to 255 white.</summary>
internal sealed record GreyPicture(int Width, int Height, byte[] Pixels)
{
    public byte this[int x, int y] => Pixels[(y * Width) + x];

    public static GreyPicture FromPng(byte[] png)
    {
        using Image<L8> image = Image.Load<L8>(png);
        byte[] pixels = new byte[image.Width * image.Height];
        image.CopyPixelDataTo(pixels);
        return new(image.Width, image.Height, pixels);
    }

    /// <summary>Share of ink of a pixel, 0 to 1.</summary>
    public double Ink(int x, int y) => 1 - (this[x, y] / 255.0);

    /// <summary>Ink in a row between two columns (the second not included), in pixels.</summary>
    public double RowInk(int y, int fromX, int toX)
    {
        double ink = 0;
        for (int x = fromX; x < toX; x++)
            ink += Ink(x, y);
        return ink;
    }

    /// <summary>Ink in a column between two rows (the second not included), in pixels.</summary>
    public double ColumnInk(int x, int fromY, int toY)
    {
        double ink = 0;
        for (int y = fromY; y < toY; y++)
            ink += Ink(x, y);
        return ink;
    }
}
