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

/// <summary>What labels should not cover.</summary>
/// <param name="Discs">Symbols: centre and radius; never covered while there is another place.</param>
/// <param name="Boxes">The scale; likewise.</param>
/// <param name="Lines">Lines; covered only when the place is otherwise much better.</param>
/// <param name="Faint">Lines that may be covered, better not.</param>
internal sealed record Obstacles(
    IReadOnlyList<(PixelPoint Centre, double Radius)> Discs,
    IReadOnlyList<PixelBox> Boxes,
    IReadOnlyList<(PixelPoint From, PixelPoint To)> Lines,
    IReadOnlyList<(PixelPoint From, PixelPoint To)> Faint);
