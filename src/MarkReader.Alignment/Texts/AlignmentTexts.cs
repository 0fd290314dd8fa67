using MarkReader.Quantities;

namespace MarkReader.Alignment.Texts;

/// <summary>Refusals of what was given to the alignment, from AlignmentTexts.resx.</summary>
internal sealed class AlignmentTexts : Texts<AlignmentTexts>;
