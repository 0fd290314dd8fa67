using MarkReader.Quantities;

namespace MarkReader.Imaging.Photos;

/// <summary>A photo's pixels for drawing on: rows from the top, four bytes a pixel in the order R, G, B, A (A = 255), upright as displayed.</summary>
public sealed record ColourPhoto(PhotoSize Size, byte[] Rgba);
