using MarkReader.Quantities;

namespace MarkReader.Application.Studies;

/// <summary>The words about studies that are kept, from KeptStudyTexts.resx.</summary>
internal sealed class KeptStudyTexts : Texts<KeptStudyTexts>;
