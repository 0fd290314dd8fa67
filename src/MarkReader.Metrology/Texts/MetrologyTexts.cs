using MarkReader.Quantities;

namespace MarkReader.Metrology.Texts;

/// <summary>Refusals of studies, from MetrologyTexts.resx.</summary>
internal sealed class MetrologyTexts : Texts<MetrologyTexts>;
