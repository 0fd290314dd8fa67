namespace MarkReader.Service.Texts;

/// <summary>Names the texts of the studies' pages.</summary>
internal sealed class StudyPageTexts;
