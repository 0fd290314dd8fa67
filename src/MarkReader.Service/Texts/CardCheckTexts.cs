namespace MarkReader.Service.Texts;

/// <summary>Names the texts of the pages on checks of printed cards.</summary>
internal sealed class CardCheckTexts;
