using MarkReader.Quantities;

namespace MarkReader.Drawing.Texts;

/// <summary>The words of pictures, overlays and card pages, from DrawingTexts.resx.</summary>
internal sealed class DrawingTexts : Texts<DrawingTexts>;
