namespace MarkReader.Service.Texts;

/// <summary>Names the texts of the visit pages: VisitTexts.resx, beside it other languages as VisitTexts.de.resx and so on.</summary>
internal sealed class VisitTexts;
