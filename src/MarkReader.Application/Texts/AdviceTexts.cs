using MarkReader.Quantities;

namespace MarkReader.Application.Texts;

/// <summary>The words for actions and for what a survey shows, from AdviceTexts.resx.</summary>
internal sealed class AdviceTexts : Texts<AdviceTexts>;
