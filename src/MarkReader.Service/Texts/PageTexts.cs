namespace MarkReader.Service.Texts;

/// <summary>Names the texts that stand on every page: PageTexts.resx.</summary>
internal sealed class PageTexts;
