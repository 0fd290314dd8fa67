using MarkReader.Quantities;

namespace MarkReader.Alignment.Shims;

/// <summary>One kind of washer or sheet in the user's stock.</summary>
/// <param name="Name">What the user calls it.</param>
/// <param name="Thickness">Nominal or measured thickness; taken to the micrometre.</param>
/// <param name="Uncertainty">Standard uncertainty of the thickness, common to all pieces of the item.</param>
/// <param name="Count">How many there are; null for as many as needed.</param>
public sealed record StockItem(string Name, Length Thickness, Length Uncertainty, int? Count = null);

/// <summary>So many pieces of one item.</summary>
public sealed record StackPart(StockItem Item, int Count);

/// <summary>Pieces laid on one another.</summary>
/// <param name="Parts">The pieces, thickest first; empty for no shim at all.</param>
public sealed record StackedShims(IReadOnlyList<StackPart> Parts)
{
    public int Pieces => Parts.Sum(p => p.Count);

    /// <summary>The sum of the thicknesses.</summary>
    public Length Height => Parts.Aggregate(Length.Zero, (sum, p) => sum + (p.Count * p.Item.Thickness));

    /// <summary>
    /// Standard uncertainty of the height. Pieces of one item come from one batch or were measured with one gauge: their errors are
    /// taken as equal and added; those of different items as independent (JCGM 100:2008, 5.1.2 and 5.2.2).
    /// </summary>
    public Length Uncertainty => Length.FromMillimetres(Math.Sqrt(Parts.Sum(p => Math.Pow(p.Count * p.Item.Uncertainty.Millimetres, 2))));
}

/// <summary>The best stack for a wanted height.</summary>
/// <param name="Stack">Within the tolerance the one with the fewest pieces, and of these the nearest; if none is, the nearest of all.</param>
/// <param name="Wanted">The height asked for.</param>
/// <param name="Tolerance">How far from it the height may be.</param>
/// <param name="Reached">Whether the stack's height is within the tolerance.</param>
public sealed record StackAdvice(StackedShims Stack, Length Wanted, Length Tolerance, bool Reached)
{
    /// <summary>Height of the stack above (positive) or below the wanted one.</summary>
    public Length Difference => Stack.Height - Wanted;
}
