namespace MarkReader.Service.Texts;

/// <summary>Names the texts of the pages on reference photos.</summary>
internal sealed class InterimPageTexts;
