using MarkReader.Quantities;

namespace MarkReader.Imaging.Fiducials;

/// <summary>A marker recognised in the photo: its id and its corners in photo pixels, clockwise from the marker's own top left.</summary>
internal sealed record MarkerSighting(int Id, IReadOnlyList<PixelPoint> Corners);
