using System.Text.Json;
using MarkReader.Application.Reports;
using MarkReader.Cameras.Profiles;

namespace MarkReader.Application.Cameras;

/// <summary>A camera that is kept.</summary>
/// <param name="Id">Counts up; never used twice.</param>
/// <param name="Version">1 at first; one more with each change.</param>
/// <param name="Profile">With its name, which no other camera has.</param>
/// <param name="ReportText">What its calibration said of it (JSON); null for a profile from a file.</param>
/// <param name="AddedAt">When it came in (UTC, to the millisecond).</param>
/// <param name="LastUsedAt">When a photo was last measured with it, or null.</param>
public sealed record KeptCamera(long Id, long Version, CameraProfile Profile, string? ReportText, DateTimeOffset AddedAt, DateTimeOffset? LastUsedAt)
{
    public string Name => Profile.Name;

    /// <summary>Whether it was there already when its profile was to be added.</summary>
    public bool WasThere { get; init; }

    /// <summary>What its calibration said of it; null for a profile from a file.</summary>
    public CameraReport? Report => ReportText is null ? null : JsonSerializer.Deserialize<CameraReport>(ReportText, ReportJson.Options);
}

/// <summary>Which photos are measured with a camera that is kept.</summary>
public enum CameraUse
{
    /// <summary>Those whose files name its camera and lens.</summary>
    Automatic,

    /// <summary>None: a newer profile of the same lens is used.</summary>
    Superseded,

    /// <summary>None by itself: its photos' files did not name camera and lens.</summary>
    Named,
}

/// <summary>The cameras that are kept.</summary>
/// <param name="Cameras">Newest first.</param>
public sealed record KeptCameras(IReadOnlyList<KeptCamera> Cameras)
{
    /// <summary>The cameras in the order in which their profiles were made; of one lens the last is used.</summary>
    public IReadOnlyList<KeptCamera> AsMade => [.. Cameras.OrderBy(c => c.Profile.Made).ThenBy(c => c.Id)];

    /// <summary>Those with which photos are measured by themselves.</summary>
    public IReadOnlyList<KeptCamera> InUse => [.. Cameras.Where(c => UseOf(c) == CameraUse.Automatic)];

    /// <summary>The others.</summary>
    public IReadOnlyList<KeptCamera> NotInUse => [.. Cameras.Where(c => UseOf(c) != CameraUse.Automatic)];

    public CameraUse UseOf(KeptCamera camera)
    {
        if (!camera.Profile.Traits.Tell)
            return CameraUse.Named;
        return UsedFor(camera).Id == camera.Id ? CameraUse.Automatic : CameraUse.Superseded;
    }

    /// <summary>The camera that is used for photos of the same lens.</summary>
    public KeptCamera UsedFor(KeptCamera camera) => AsMade.LastOrDefault(c => c.Profile.Traits.Tell && c.Profile.Traits.SameLens(camera.Profile.Traits)) ?? camera;
}
