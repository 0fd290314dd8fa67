using MarkReader.Alignment.Estimates;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Shims;

/// <summary>Bounds of what a stack is searched for; they also bound the search's time and memory.</summary>
public static class StockChecks
{
    /// <summary>Most kinds of pieces in a stock.</summary>
    public const int MostItems = 64;

    /// <summary>Highest stack, mm. A mount on more than this needs a block, not washers.</summary>
    public const double MostHeight = 20;

    /// <summary>Thinnest piece, mm: foil.</summary>
    public const double Thinnest = 0.01;

    private const int MostPieces = 10_000;

    /// <summary>What is wrong with a wanted height in mm, or null.</summary>
    public static Failure? Height(double wanted) => InputChecks.Lengths(
        wanted, (0, MostHeight), ShimFailures.HeightInvalid, "the wanted height", $"a stack of shims can only raise, and by {InputChecks.Mm(20)} at most");

    /// <summary>What is wrong with a height's tolerance in mm, or null.</summary>
    public static Failure? Tolerance(double tolerance) => InputChecks.Lengths(
        tolerance, (0, MostHeight), ShimFailures.ToleranceInvalid, "the height's tolerance", $"say how far from the wanted height the stack may be, for example {InputChecks.Mm(0.05)}");

    /// <summary>What is wrong with the call, or null.</summary>
    internal static Failure? All(IReadOnlyList<StockItem> stock, Length wanted, Length tolerance)
    {
        const string each = "give each kind's thickness in mm between 0.01 and 20, its standard uncertainty in mm and its count";
        if (stock.Count == 0)
            return new(ShimFailures.StockEmpty, "the stock of washers and sheets is empty", each);
        if (stock.Count > MostItems)
            return new(ShimFailures.StockTooLarge, $"the stock has {stock.Count} kinds of pieces, more than {MostItems}", "leave out kinds that are alike");
        return Height(wanted.Millimetres)
            ?? Tolerance(tolerance.Millimetres)
            ?? stock.Select(item => Item(item, each)).FirstOrDefault(wrong => wrong is not null);
    }

    private static Failure? Item(StockItem item, string hint) =>
        InputChecks.Lengths(item.Thickness.Millimetres, (Thinnest, MostHeight), ShimFailures.ThicknessInvalid, "a piece's thickness", hint)
        ?? InputChecks.Lengths(item.Uncertainty.Millimetres, (0, item.Thickness.Millimetres), ShimFailures.UncertaintyInvalid, "a thickness's standard uncertainty", hint)
        ?? InputChecks.Between(item.Count ?? 1, (1, MostPieces), ShimFailures.CountInvalid, "a piece's count", "leave out kinds of which there is none; without a count there are as many as needed");
}
