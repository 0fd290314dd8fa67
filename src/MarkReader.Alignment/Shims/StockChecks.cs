using MarkReader.Alignment.Estimates;
using MarkReader.Alignment.Texts;
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
        wanted, (0, MostHeight), ShimFailures.HeightInvalid, AlignmentTexts.Get("stockChecks.wantedHeight"), AlignmentTexts.Word("stockChecks.stackShimsCanOnlyRaise", InputChecks.Mm(20)));

    /// <summary>What is wrong with a height's tolerance in mm, or null.</summary>
    public static Failure? Tolerance(double tolerance) => InputChecks.Lengths(
        tolerance, (0, MostHeight), ShimFailures.ToleranceInvalid, AlignmentTexts.Get("stockChecks.heightTolerance"), AlignmentTexts.Word("stockChecks.sayHowFarFromWanted", InputChecks.Mm(0.05)));

    /// <summary>What is wrong with the call, or null.</summary>
    internal static Failure? All(IReadOnlyList<StockItem> stock, Length wanted, Length tolerance)
    {
        string each = AlignmentTexts.Get("stockChecks.giveEachKindThicknessIn");
        if (stock.Count == 0)
            return new(ShimFailures.StockEmpty, AlignmentTexts.Get("stockChecks.stockWashersAndSheetsEmpty"), each);
        if (stock.Count > MostItems)
            return new(ShimFailures.StockTooLarge, AlignmentTexts.Word("stockChecks.stockHasKindsPiecesMore", stock.Count, MostItems), AlignmentTexts.Get("stockChecks.leaveOutKindsThatAlike"));
        return Height(wanted.Millimetres)
            ?? Tolerance(tolerance.Millimetres)
            ?? stock.Select(item => Item(item, each)).FirstOrDefault(wrong => wrong is not null);
    }

    private static Failure? Item(StockItem item, string hint) =>
        InputChecks.Lengths(item.Thickness.Millimetres, (Thinnest, MostHeight), ShimFailures.ThicknessInvalid, AlignmentTexts.Get("stockChecks.pieceThickness"), hint)
        ?? InputChecks.Lengths(item.Uncertainty.Millimetres, (0, item.Thickness.Millimetres), ShimFailures.UncertaintyInvalid, AlignmentTexts.Get("stockChecks.thicknessStandardUncertainty"), hint)
        ?? InputChecks.Between(item.Count ?? 1, (1, MostPieces), ShimFailures.CountInvalid, AlignmentTexts.Get("stockChecks.pieceCount"), AlignmentTexts.Get("stockChecks.leaveOutKindsWhichThere"));
}
