using MarkReader.Quantities;

namespace MarkReader.Practice.Texts;

/// <summary>What the practice machine refuses, from PracticeTexts.resx.</summary>
internal sealed class PracticeTexts : Texts<PracticeTexts>;
