using MarkReader.Quantities;

namespace MarkReader.Cards;

/// <summary>What cards and boards are for, from CardTexts.resx.</summary>
internal sealed class CardTexts : Texts<CardTexts>;
