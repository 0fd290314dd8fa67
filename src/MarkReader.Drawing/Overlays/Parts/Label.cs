using MarkReader.Quantities;

namespace MarkReader.Drawing.Overlays.Parts;

/// <summary>A label to be placed near a point.</summary>
/// <param name="Part">What it belongs to.</param>
/// <param name="Anchor">The point it names.</param>
/// <param name="Clear">Radius about the anchor that it must leave free, px.</param>
/// <param name="Lines">Its lines, the first one in bold type and in its colour.</param>
/// <param name="Leader">Whether a line leads from a distant label to its point.</param>
internal sealed record Label(string Part, PixelPoint Anchor, double Clear, IReadOnlyList<string> Lines, Colour Colour, bool Leader = true);

/// <summary>A label in its place.</summary>
internal sealed record PlacedLabel(Label Label, PixelBox Box, IReadOnlyList<OverlayPrimitive> Primitives);
