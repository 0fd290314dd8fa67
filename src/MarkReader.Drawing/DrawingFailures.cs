using MarkReader.Quantities;

namespace MarkReader.Drawing;

/// <summary>The refusals of this project.</summary>
public static class DrawingFailures
{
    public static readonly FailureCode CardFormatUnknown = new("CARD_FORMAT_UNKNOWN", FailureKind.BadInput);

    public static readonly FailureCode PaperUnknown = new("PAPER_UNKNOWN", FailureKind.BadInput);

    public static readonly FailureCode OverlayFormatUnknown = new("OVERLAY_FORMAT_UNKNOWN", FailureKind.BadInput);

    public static readonly FailureCode ChartFormatUnknown = new("PLOT_FORMAT_UNKNOWN", FailureKind.BadInput);
}
