using MarkReader.Quantities;

namespace MarkReader.Alignment.Texts;

/// <summary>The adviser's sentences, from AdviserTexts.resx.</summary>
internal sealed class AdviserTexts : Texts<AdviserTexts>;
