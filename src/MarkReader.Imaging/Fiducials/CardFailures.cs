using MarkReader.Quantities;

namespace MarkReader.Imaging.Fiducials;

/// <summary>Why no card could be used.</summary>
public static class CardFailures
{
    public static readonly FailureCode NoCard = new("NO_CARD", FailureKind.NotMeasurable);
    public static readonly FailureCode Mirrored = new("CARD_MIRRORED", FailureKind.NotMeasurable);
    public static readonly FailureCode PartlySeen = new("CARD_PARTLY_SEEN", FailureKind.NotMeasurable);
    public static readonly FailureCode TooDark = new("TOO_DARK", FailureKind.NotMeasurable);
    public static readonly FailureCode Unsharp = new("CARD_UNSHARP", FailureKind.NotMeasurable);
    public static readonly FailureCode RulerReading = new("RULER_READING", FailureKind.BadInput);
}
