namespace MarkReader.Service.Texts;

/// <summary>Names the texts of a machine's history.</summary>
internal sealed class HistoryTexts;
