using MarkReader.Quantities;

namespace MarkReader.Imaging.Marks;

/// <summary>A dark spot in the free zone of which the photo does not tell whether it is a mark; the user may.</summary>
/// <param name="Centre">Rough centre (mm).</param>
/// <param name="Photo">The centre in the photo (px).</param>
/// <param name="Diameter">Rough diameter.</param>
/// <param name="Reason">What speaks against a mark, in a few words.</param>
public sealed record DoubtfulSpot(CardPoint Centre, PixelPoint Photo, Length Diameter, string Reason);
