using MarkReader.Imaging.Rectification;
using OpenCvSharp;

namespace MarkReader.Imaging.Marks;

/// <summary>An area that may be a mark.</summary>
/// <param name="Outline">Its outline on the search map.</param>
/// <param name="Strokes">Lines that run into it; null when there are none.</param>
internal sealed record MarkArea(MarkCandidate Candidate, Point[] Outline, HiddenPlaces? Strokes);

/// <summary>Places of a grid that are to be left out.</summary>
internal sealed record HiddenPlaces(ZoneGrid Grid, bool[] Mask)
{
    public bool Hides(Quantities.CardPoint p)
    {
        (double x, double y) = Grid.ToPixel(p);
        int ix = (int)Math.Round(x), iy = (int)Math.Round(y);
        return ix >= 0 && iy >= 0 && ix < Grid.Size && iy < Grid.Size && Mask[(iy * Grid.Size) + ix];
    }
}
