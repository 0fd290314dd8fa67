namespace MarkReader.Service.Texts;

/// <summary>Names the texts of the pages that find an aim point from two marks.</summary>
internal sealed class MeasureTexts;
