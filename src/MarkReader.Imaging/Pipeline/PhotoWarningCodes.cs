namespace MarkReader.Imaging.Pipeline;

/// <summary>Codes of warnings that others look for.</summary>
public static class PhotoWarningCodes
{
    /// <summary>No camera profile was used, since the photo's file does not name its camera.</summary>
    public const string CameraUnnamed = "cameraUnnamed";
}
