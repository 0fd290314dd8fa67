using MarkReader.Quantities;

namespace MarkReader.Imaging.Rectification;

/// <summary>Where one short section of a printed edge was seen.</summary>
/// <param name="Card">The section's middle on the card.</param>
/// <param name="Normal">Unit vector in the photo, across the edge, towards white.</param>
/// <param name="Offset">Distance along the normal from the predicted to the seen edge, px.</param>
/// <param name="Variance">Variance of the offset from the noise of the profile, px².</param>
/// <param name="White">Light of the paper beside it, of full scale.</param>
/// <param name="EdgeIndex">Which printed edge; sections of one edge share its faults.</param>
internal sealed record EdgeMeasurement(CardPoint Card, PixelVector Normal, double Offset, double Variance, double White, int EdgeIndex);
