namespace MarkReader.Service.Texts;

/// <summary>Names the texts that stand around what the program says in the guide: GuideTexts.resx.</summary>
internal sealed class GuideTexts;
