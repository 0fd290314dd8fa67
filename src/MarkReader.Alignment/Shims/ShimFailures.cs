using MarkReader.Quantities;

namespace MarkReader.Alignment.Shims;

/// <summary>Refusals of a stock of shims or of a wanted height.</summary>
public static class ShimFailures
{
    public static readonly FailureCode HeightInvalid = new("SHIM_HEIGHT_INVALID", FailureKind.BadInput);
    public static readonly FailureCode ToleranceInvalid = new("SHIM_TOLERANCE_INVALID", FailureKind.BadInput);
    public static readonly FailureCode StockEmpty = new("SHIM_STOCK_EMPTY", FailureKind.BadInput);
    public static readonly FailureCode StockTooLarge = new("SHIM_STOCK_TOO_LARGE", FailureKind.BadInput);
    public static readonly FailureCode ThicknessInvalid = new("SHIM_THICKNESS_INVALID", FailureKind.BadInput);
    public static readonly FailureCode UncertaintyInvalid = new("SHIM_UNCERTAINTY_INVALID", FailureKind.BadInput);
    public static readonly FailureCode CountInvalid = new("SHIM_COUNT_INVALID", FailureKind.BadInput);
}
