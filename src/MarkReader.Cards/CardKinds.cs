namespace MarkReader.Cards;

/// <summary>The kinds of card defined in calibration/cards, read from the data built into this assembly.</summary>
public static class CardKinds
{
    private static readonly Lazy<IReadOnlyList<CardKind>> s_all = new(CardData.ReadAll);

    /// <summary>The small card, for a mirror's frame or the head's plate.</summary>
    public const string Default = "plate";

    public static IReadOnlyList<CardKind> All => s_all.Value;

    /// <summary>The kind of this name, or null.</summary>
    public static CardKind? Find(string name) => All.FirstOrDefault(k => k.Name == name);

    /// <summary>The kind to which a marker id belongs, or null.</summary>
    public static CardKind? OfMarker(int id) => All.FirstOrDefault(k => k.Markers.Any(m => m.Id == id));
}
