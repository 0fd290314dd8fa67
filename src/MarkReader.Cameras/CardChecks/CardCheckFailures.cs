using MarkReader.Quantities;

namespace MarkReader.Cameras.CardChecks;

/// <summary>What a check of a printed card refuses.</summary>
public static class CardCheckFailures
{
    public static readonly FailureCode TooFewViews = new("CARD_FEW_VIEWS", FailureKind.NotMeasurable);

    /// <summary>The camera stood on one side of the card in all photos, or straight above it.</summary>
    public static readonly FailureCode OneSide = new("CARD_ONE_SIDE", FailureKind.NotMeasurable);

    /// <summary>The photos show another lens than the profile says.</summary>
    public static readonly FailureCode CameraDiffers = new("CARD_CAMERA_DIFFERS", FailureKind.NotMeasurable);

    /// <summary>The photos fit neither one card nor the profile.</summary>
    public static readonly FailureCode ShapesDiffer = new("CARD_SHAPES_DIFFER", FailureKind.NotMeasurable);

    public static readonly FailureCode Undetermined = new("CARD_UNDETERMINED", FailureKind.NotMeasurable);
}
