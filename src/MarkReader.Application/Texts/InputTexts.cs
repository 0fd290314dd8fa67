using MarkReader.Quantities;

namespace MarkReader.Application.Texts;

/// <summary>Refusals of photos, files and numbers that were given, from InputTexts.resx.</summary>
internal sealed class InputTexts : Texts<InputTexts>;
