using MarkReader.Alignment.Shims;
using MarkReader.Application.Shims;

namespace MarkReader.CommandLine.Output;

/// <summary>A stack of shims for people.</summary>
internal static class ShimsText
{
    private static string None => $"no stack of at most {StackSearch.DefaultMostPieces} pieces of this stock";

    /// <param name="isUsual">Whether the stock is the usual one, which needs no list.</param>
    public static string Of(StackFinding finding, bool isUsual) => string.Join(
        Environment.NewLine,
        [
            .. Lines(finding.Advice),
            "stock: " + (isUsual ? "ISO 7089 washers M2 to M8, as many as needed" : string.Join(", ", finding.Stock.Select(Item))),
            Words.Cautions,
        ]);

    /// <summary>The pieces, and how their height meets the wanted one.</summary>
    public static IEnumerable<string> Lines(StackAdvice advice)
    {
        StackedShims stack = advice.Stack;
        if (stack.Pieces > 0)
        {
            Table table = new("shims", "thickness/mm", "pieces", "height/mm");
            foreach (StackPart part in stack.Parts)
                table.Add(part.Item.Name, Words.Fixed(part.Item.Thickness.Millimetres, 3), $"{part.Count}", Words.Fixed(part.Count * part.Item.Thickness.Millimetres, 3));
            table.Add("stack", "", $"{stack.Pieces}", Words.Fixed(stack.Height.Millimetres, 3));
            yield return table.ToString();
        }

        yield return Sentence(advice);
    }

    private static string Sentence(StackAdvice advice)
    {
        string wanted = $"{Words.Fixed(advice.Wanted.Millimetres, 3)} mm within {Words.Fixed(advice.Tolerance.Millimetres, 3)} mm";
        string difference = Difference(advice.Difference.Millimetres);
        return (advice.Reached, advice.Stack.Pieces) switch
        {
            (true, 0) => $"wanted {wanted}: no shim is needed",
            (true, _) => $"wanted {wanted}: the stack is {difference}; standard uncertainty of its height {Words.Fixed(advice.Stack.Uncertainty.Millimetres, 3)} mm",
            (false, 0) => $"wanted {wanted}: {None} comes so near, and no shim at all is the nearest: thinner sheets are needed",
            (false, _) => $"wanted {wanted}: {None} comes so near; the nearest is {difference}; standard uncertainty of its height {Words.Fixed(advice.Stack.Uncertainty.Millimetres, 3)} mm",
        };
    }

    private static string Difference(double mm) => Math.Round(mm, 3) switch
    {
        0 => "as high as that",
        > 0 => $"{Words.Fixed(mm, 3)} mm higher",
        _ => $"{Words.Fixed(-mm, 3)} mm lower",
    };

    private static string Item(StockItem item) => item.Count is { } count ? $"{item.Name} ({count})" : $"{item.Name} (as many as needed)";
}
