using MarkReader.Quantities;

namespace MarkReader.Imaging.Marks;

/// <summary>A disc in the card frame, or an ellipse of the same area; radius in mm, shape as in <see cref="FittedOutline"/>.</summary>
internal readonly record struct Disc(CardPoint Centre, double Radius, double E1 = 0, double E2 = 0);
