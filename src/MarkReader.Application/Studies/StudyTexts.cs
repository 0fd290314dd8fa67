using MarkReader.Quantities;

namespace MarkReader.Application.Studies;

/// <summary>The words of studies, from StudyTexts.resx.</summary>
internal sealed class StudyTexts : Texts<StudyTexts>;
