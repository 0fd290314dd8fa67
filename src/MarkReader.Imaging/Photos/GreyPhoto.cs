using MarkReader.Quantities;
using OpenCvSharp;

namespace MarkReader.Imaging.Photos;

/// <summary>A photo decoded once as 8-bit grey, upright as displayed.</summary>
internal sealed class GreyPhoto(Mat pixels, PhotoHeader header) : IDisposable
{
    public Mat Pixels { get; } = pixels;

    public PhotoHeader Header { get; } = header;

    public PhotoSize Size { get; } = new(pixels.Width, pixels.Height);

    public void Dispose() => Pixels.Dispose();
}
