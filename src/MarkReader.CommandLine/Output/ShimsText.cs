using MarkReader.Alignment.Shims;
using MarkReader.Application.Shims;
using static MarkReader.Quantities.Texts<MarkReader.CommandLine.Output.OutputTexts>;

namespace MarkReader.CommandLine.Output;

/// <summary>A stack of shims for people.</summary>
internal static class ShimsText
{
    private static string None => Say("shims.noStackOfAt", StackSearch.DefaultMostPieces);

    /// <param name="isUsual">Whether the stock is the usual one, which needs no list.</param>
    public static string Of(StackFinding finding, bool isUsual) => string.Join(
        Environment.NewLine,
        [
            .. Lines(finding.Advice),
            Get("shims.stock") + (isUsual ? Get("shims.usualStock") : string.Join(", ", finding.Stock.Select(Item))),
            Words.Cautions,
        ]);

    /// <summary>The pieces, and how their height meets the wanted one.</summary>
    public static IEnumerable<string> Lines(StackAdvice advice)
    {
        StackedShims stack = advice.Stack;
        if (stack.Pieces > 0)
        {
            Table table = new(Get("shims.shims"), Get("shims.thicknessMm"), Get("shims.pieces"), Get("shims.heightMm"));
            foreach (StackPart part in stack.Parts)
                table.Add(part.Item.Name, Words.Fixed(part.Item.Thickness.Millimetres, 3), $"{part.Count}", Words.Fixed(part.Count * part.Item.Thickness.Millimetres, 3));
            table.Add(Get("shims.stack"), "", $"{stack.Pieces}", Words.Fixed(stack.Height.Millimetres, 3));
            yield return table.ToString();
        }

        yield return Sentence(advice);
    }

    private static string Sentence(StackAdvice advice)
    {
        string wanted = Say("shims.mmWithinMm", Words.Fixed(advice.Wanted.Millimetres, 3), Words.Fixed(advice.Tolerance.Millimetres, 3));
        string difference = Difference(advice.Difference.Millimetres);
        return (advice.Reached, advice.Stack.Pieces) switch
        {
            (true, 0) => Say("shims.wantedNoShimIs", wanted),
            (true, _) => Say("shims.wantedTheStackIs", wanted, difference, Words.Fixed(advice.Stack.Uncertainty.Millimetres, 3)),
            (false, 0) => Say("shims.wantedComesSoNear", wanted, None),
            (false, _) => Say("shims.wantedComesSoNear2", wanted, None, difference, Words.Fixed(advice.Stack.Uncertainty.Millimetres, 3)),
        };
    }

    private static string Difference(double mm) => Math.Round(mm, 3) switch
    {
        0 => Get("shims.asHighAsThat"),
        > 0 => Say("shims.mmHigher", Words.Fixed(mm, 3)),
        _ => Say("shims.mmLower", Words.Fixed(-mm, 3)),
    };

    private static string Item(StockItem item) => item.Count is { } count ? $"{item.Name} ({count})" : Say("shims.asManyAsNeeded", item.Name);
}
