using MarkReader.Quantities;

namespace MarkReader.Application.Aiming;

/// <summary>Refusals about which marks a leg's photos show.</summary>
public static class AimFailures
{
    /// <summary>Both files hold the same bytes.</summary>
    public static readonly FailureCode SamePhoto = new("SAME_PHOTO", FailureKind.BadInput);

    /// <summary>The two photos show cards of different kinds.</summary>
    public static readonly FailureCode CardsDiffer = new("CARDS_DIFFER", FailureKind.NotMeasurable);

    /// <summary>The near photo shows two marks and the far photo only one of them.</summary>
    public static readonly FailureCode PhotosSwapped = new("PHOTOS_SWAPPED", FailureKind.BadInput);

    /// <summary>The near photo shows more than one mark.</summary>
    public static readonly FailureCode NearMarkUnclear = new("NEAR_MARK_UNCLEAR", FailureKind.NotMeasurable);

    /// <summary>The far photo shows more marks than the near and one new one.</summary>
    public static readonly FailureCode FarMarkUnclear = new("FAR_MARK_UNCLEAR", FailureKind.NotMeasurable);

    /// <summary>No mark of the far photo stands where the near photo shows the near mark.</summary>
    public static readonly FailureCode NearMarkMoved = new("NEAR_MARK_MOVED", FailureKind.NotMeasurable);

    /// <summary>The marks of the far photo stand too close together to tell the new one from the old one.</summary>
    public static readonly FailureCode MarksTooClose = new("MARKS_TOO_CLOSE", FailureKind.NotMeasurable);

    /// <summary>One photo does not show exactly two marks.</summary>
    public static readonly FailureCode TwoMarksNeeded = new("TWO_MARKS_NEEDED", FailureKind.NotMeasurable);

    /// <summary>The two marks hardly differ in the direction that names the near one.</summary>
    public static readonly FailureCode FirstMarkUnclear = new("FIRST_MARK_UNCLEAR", FailureKind.BadInput);
}
