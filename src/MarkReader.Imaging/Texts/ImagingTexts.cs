using MarkReader.Quantities;

namespace MarkReader.Imaging.Texts;

/// <summary>Refusals and warnings about photos, from ImagingTexts.resx.</summary>
internal sealed class ImagingTexts : Texts<ImagingTexts>;
