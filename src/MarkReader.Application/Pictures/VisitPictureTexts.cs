using MarkReader.Quantities;

namespace MarkReader.Application.Pictures;

/// <summary>The titles and descriptions of a visit's pictures, from VisitPictureTexts.resx.</summary>
internal sealed class VisitPictureTexts : Texts<VisitPictureTexts>;
