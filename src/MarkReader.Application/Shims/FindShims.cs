using MarkReader.Alignment.Shims;
using MarkReader.Quantities;

namespace MarkReader.Application.Shims;

/// <summary>Which stack of shims is wanted, in mm, not yet checked.</summary>
/// <param name="Height">The height to reach.</param>
/// <param name="Tolerance">How far from it the stack may be.</param>
/// <param name="Stock">What the user has; null for ISO 7089 washers, as many as needed.</param>
public sealed record StackRequest(double Height, double Tolerance = StackRequest.DefaultTolerance, Stock? Stock = null)
{
    /// <summary>A fifth of the usual tolerance of 0.5 mm: what a stack is off matters little then. ISO 7089 washers come that near to every height from 0.2 mm to 11 mm.</summary>
    public const double DefaultTolerance = 0.1;
}

/// <summary>The best stack, and the stock that it is taken from.</summary>
public sealed record StackFinding(StackAdvice Advice, IReadOnlyList<StockItem> Stock);

/// <summary>From a wanted height to the washers that make it.</summary>
public static class FindShims
{
    public static Outcome<StackFinding> Run(StackRequest request)
    {
        if ((StockChecks.Height(request.Height) ?? StockChecks.Tolerance(request.Tolerance)) is { } wrong)
            return wrong;
        IReadOnlyList<StockItem> stock = request.Stock?.Items ?? UsualStock.Washers;
        return StackSearch.Best(stock, Length.FromMillimetres(request.Height), Length.FromMillimetres(request.Tolerance)).TryGet(out StackAdvice? advice, out Failure? failure)
            ? new StackFinding(advice, stock)
            : failure;
    }
}
