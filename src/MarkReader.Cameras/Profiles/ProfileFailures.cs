using MarkReader.Quantities;

namespace MarkReader.Cameras.Profiles;

/// <summary>What a camera profile refuses.</summary>
public static class ProfileFailures
{
    public static readonly FailureCode Misfit = new("CAMERA_MISFIT", FailureKind.BadInput);
}
