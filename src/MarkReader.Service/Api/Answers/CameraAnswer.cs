using System.Globalization;
using System.Text.Json;
using MarkReader.Application.Cameras;

namespace MarkReader.Service.Api.Answers;

/// <summary>A camera that is kept.</summary>
/// <param name="Id">Its number.</param>
/// <param name="Name">Its name, which no other has.</param>
/// <param name="Version">Counts changes; the ETag.</param>
/// <param name="AddedAt">When it came in.</param>
/// <param name="LastUsedAt">When a photo was last measured with it, or null.</param>
/// <param name="Use">Which photos are measured with it.</param>
/// <param name="Profile">Its profile: focal lengths and principal point in px, the rest without unit.</param>
/// <param name="Report">What its calibration said of it; null for a profile from a file.</param>
/// <param name="File">Address of the profile alone.</param>
internal sealed record CameraAnswer(
    long Id, string Name, long Version, DateTimeOffset AddedAt, DateTimeOffset? LastUsedAt, CameraUse Use, JsonElement Profile, CameraReport? Report, string File)
{
    public static CameraAnswer From(KeptCamera kept, KeptCameras all) => new(
        kept.Id,
        kept.Name,
        kept.Version,
        kept.AddedAt,
        kept.LastUsedAt,
        all.UseOf(kept),
        JsonSerializer.Deserialize<JsonElement>(CameraProfileFile.Write(kept.Profile)),
        kept.Report,
        Address(kept.Id) + "/file");

    public static string Address(long id) => string.Create(CultureInfo.InvariantCulture, $"/api/cameras/{id}");
}

/// <summary>The cameras that are kept.</summary>
/// <param name="Cameras">Newest first.</param>
internal sealed record CameraList(IReadOnlyList<CameraEntry> Cameras);

/// <summary>A camera in a list.</summary>
/// <param name="Width">Width of the sensor's picture, px.</param>
/// <param name="Height">Its height.</param>
/// <param name="FocalLength">Along x, px.</param>
/// <param name="MadeAt">When its profile was worked out.</param>
internal sealed record CameraEntry(long Id, string Name, long Version, int Width, int Height, double FocalLength, DateTimeOffset MadeAt, DateTimeOffset? LastUsedAt, CameraUse Use)
{
    public static CameraEntry From(KeptCamera kept, KeptCameras all) => new(
        kept.Id,
        kept.Name,
        kept.Version,
        kept.Profile.Camera.Photo.Width,
        kept.Profile.Camera.Photo.Height,
        kept.Profile.Camera.FocalX,
        kept.Profile.Made,
        kept.LastUsedAt,
        all.UseOf(kept));
}
