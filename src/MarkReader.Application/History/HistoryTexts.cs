using MarkReader.Quantities;

namespace MarkReader.Application.History;

/// <summary>The words of a history, from HistoryTexts.resx.</summary>
internal sealed class HistoryTexts : Texts<HistoryTexts>;
