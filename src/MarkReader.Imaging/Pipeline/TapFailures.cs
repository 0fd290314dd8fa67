using MarkReader.Quantities;

namespace MarkReader.Imaging.Pipeline;

/// <summary>Refusals of places that the user names as marks.</summary>
public static class TapFailures
{
    public static readonly FailureCode OutsidePhoto = new("TAP_OUTSIDE_PHOTO", FailureKind.BadInput);
    public static readonly FailureCode OutsideZone = new("TAP_OUTSIDE_ZONE", FailureKind.BadInput);
}
