using MarkReader.Quantities;

namespace MarkReader.Imaging.Marks;

/// <summary>A disc in the card frame, or an ellipse of the same area; radius in mm.</summary>
internal readonly record struct Disc(CardPoint Centre, double Radius, EllipticShape Shape = default);
