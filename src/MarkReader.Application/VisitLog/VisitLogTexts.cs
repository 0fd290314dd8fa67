using MarkReader.Quantities;

namespace MarkReader.Application.VisitLog;

/// <summary>Refusals of visits and of whole visits in one file, from VisitLogTexts.resx.</summary>
internal sealed class VisitLogTexts : Texts<VisitLogTexts>;
