namespace MarkReader.Service.Texts;

/// <summary>Names the texts of the cautions that stand beside every pulse.</summary>
internal sealed class CautionTexts;
