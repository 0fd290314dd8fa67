using OpenCvSharp;

namespace MarkReader.Imaging.Photos;

/// <summary>Reads a grey photo between its pixels, bilinearly, in linear light.</summary>
internal readonly unsafe struct PixelSampler(Mat grey)
{
    private readonly byte* _data = (byte*)grey.Data;
    private readonly long _stride = grey.Step();
    private readonly int _width = grey.Width;
    private readonly int _height = grey.Height;

    public bool Contains(double x, double y) => x >= 0 && y >= 0 && x < _width - 1 && y < _height - 1;

    /// <summary>Linear light at a point for which <see cref="Contains"/> is true.</summary>
    public double this[double x, double y]
    {
        get
        {
            int ix = (int)x, iy = (int)y;
            double fx = x - ix, fy = y - iy;
            byte* p = _data + (iy * _stride) + ix;
            float[] t = LinearLight.Table;
            double top = t[p[0]] + (fx * (t[p[1]] - t[p[0]]));
            double bottom = t[p[_stride]] + (fx * (t[p[_stride + 1]] - t[p[_stride]]));
            return top + (fy * (bottom - top));
        }
    }
}
