namespace MarkReader.Quantities;

/// <summary>Words within sentences, from WordingTexts.resx.</summary>
internal sealed class WordingTexts : Texts<WordingTexts>;
