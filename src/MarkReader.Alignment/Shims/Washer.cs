using MarkReader.Alignment.Texts;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Shims;

/// <summary>A standard washer.</summary>
/// <param name="Size">The thread it is made for.</param>
/// <param name="Hole">Smallest diameter of the hole.</param>
/// <param name="Outer">Largest outer diameter.</param>
/// <param name="Thickness">Nominal thickness h.</param>
/// <param name="Thickest">Largest thickness that the standard allows.</param>
public sealed record Washer(string Size, Length Hole, Length Outer, Length Thickness, Length Thickest)
{
    /// <summary>Standard uncertainty of the thickness: a rectangular distribution of half-width h max − h (JCGM 100:2008, 4.3.7).</summary>
    public Length Uncertainty => (1 / Math.Sqrt(3)) * (Thickest - Thickness);

    /// <summary>This washer as an item of a stock; a null count means as many as needed.</summary>
    public StockItem InStock(int? count = null) => new(AlignmentTexts.Say("washer.washer", Size), Thickness, Uncertainty, count);
}

/// <summary>ISO 7089, plain washers, normal series, product grade A.</summary>
public static class Iso7089
{
    public static IReadOnlyList<Washer> Washers { get; } =
    [
        Of("M2", 2.2, 5, 0.3, 0.35),
        Of("M2.5", 2.7, 6, 0.5, 0.55),
        Of("M3", 3.2, 7, 0.5, 0.55),
        Of("M4", 4.3, 9, 0.8, 0.9),
        Of("M5", 5.3, 10, 1.0, 1.1),
        Of("M6", 6.4, 12, 1.6, 1.8),
        Of("M8", 8.4, 16, 1.6, 1.8),
    ];

    private static Washer Of(string size, double hole, double outer, double thickness, double thickest) => new(
        size, Length.FromMillimetres(hole), Length.FromMillimetres(outer), Length.FromMillimetres(thickness), Length.FromMillimetres(thickest));
}
