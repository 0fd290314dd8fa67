using MarkReader.Quantities;

namespace MarkReader.Application.Interim;

/// <summary>The words of an interim check, from InterimTexts.resx.</summary>
public sealed class InterimTexts : Texts<InterimTexts>;
