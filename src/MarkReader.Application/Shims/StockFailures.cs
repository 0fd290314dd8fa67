using MarkReader.Quantities;

namespace MarkReader.Application.Shims;

/// <summary>Refusals of a stock as people write it.</summary>
public static class StockFailures
{
    public static readonly FailureCode Unreadable = new("SHIM_STOCK_UNREADABLE", FailureKind.BadInput);
}
