using MarkReader.Quantities;

namespace MarkReader.Application.CardChecks;

/// <summary>The words about checks of printed cards, from CardCheckTexts.resx.</summary>
internal sealed class CardCheckTexts : Texts<CardCheckTexts>;
