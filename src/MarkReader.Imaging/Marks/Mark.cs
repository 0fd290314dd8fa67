using MarkReader.Quantities;

namespace MarkReader.Imaging.Marks;

/// <summary>A burn mark measured in the card frame.</summary>
/// <param name="Centre">Its centre (mm) with the covariance of everything known (mm²).</param>
/// <param name="Photo">The centre in the photo (px).</param>
/// <param name="Diameter">Diameter of the circle of equal area at half depth, mm.</param>
/// <param name="Shape">How it looks.</param>
/// <param name="Budget">The components of its covariance; they add up to it.</param>
public sealed record Mark(MeasuredPoint Centre, PixelPoint Photo, Length Diameter, MarkShape Shape, IReadOnlyList<UncertaintyComponent> Budget);

/// <summary>The shape of a mark at half depth.</summary>
/// <param name="AxisRatio">Minor over major axis of the fitted ellipse, 0 to 1.</param>
/// <param name="Contrast">Depth of the mark: 1 − darkest / surroundings, 0 to 1.</param>
/// <param name="EdgeWidth">Standard deviation of the edge's blur, mm.</param>
public sealed record MarkShape(double AxisRatio, double Contrast, double EdgeWidth);
