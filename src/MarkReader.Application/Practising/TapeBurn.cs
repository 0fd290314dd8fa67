using MarkReader.Quantities;

namespace MarkReader.Application.Practising;

/// <summary>A mark that a practice pulse burnt into the tape.</summary>
/// <param name="Place">Its centre in the card frame: the truth that a photo of it is measured against.</param>
/// <param name="Diameter">Diameter of the circle within which it is more than half as dark as at its darkest; above zero.</param>
public sealed record TapeBurn(CardPoint Place, Length Diameter);
