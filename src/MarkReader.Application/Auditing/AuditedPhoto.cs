using MarkReader.Quantities;

namespace MarkReader.Application.Auditing;

/// <summary>One photo against its truth file.</summary>
/// <param name="Name">File name of the photo, or of the truth file when that is what is wrong.</param>
/// <param name="Truth">The truth; null when its file is bad or its photo is missing.</param>
/// <param name="Found">Marks found that are true.</param>
/// <param name="False">Marks found that are not.</param>
/// <param name="Refusal">Why the photo was not measured, or what is wrong with the files; null when it was measured.</param>
public sealed record AuditedPhoto(string Name, Truth? Truth, IReadOnlyList<MatchedMark> Found, int False, Failure? Refusal)
{
    /// <summary>Name of the camera's profile with which it was measured; null for none.</summary>
    public string? CameraProfile { get; init; }

    /// <summary>Why the camera's profile was not used although it fits the file; null when it was used, or none was named.</summary>
    public string? CameraNotUsed { get; init; }

    /// <summary>Kind of scene, as its truth file names it.</summary>
    public string Kind => Truth?.Kind ?? Auditing.Truth.NoKind;

    /// <summary>Marks that were to be found: none when the truth file expects a refusal.</summary>
    public int Expected => Truth is { ExpectedError: null } truth ? truth.Marks.Count : 0;

    /// <summary>True marks that were not found. All of them when the photo was refused against expectation.</summary>
    public int Missed => Math.Max(0, Expected - Found.Count);

    /// <summary>Whether the files themselves can be audited.</summary>
    public bool FilesAreSound => Truth is not null;

    /// <summary>Whether everything is as the truth file says: each mark found, none invented, or the expected refusal given.</summary>
    public bool AsExpected => Truth switch
    {
        null => false,
        { ExpectedError: { } code } => Refusal?.Code.Name == code,
        _ => Refusal is null && Missed == 0 && False == 0,
    };
}
