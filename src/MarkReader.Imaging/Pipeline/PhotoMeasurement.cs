using MarkReader.Imaging.Marks;
using MarkReader.Imaging.Quality;
using MarkReader.Quantities;

namespace MarkReader.Imaging.Pipeline;

/// <summary>What was measured in one photo.</summary>
/// <param name="Photo">Size as displayed, px.</param>
/// <param name="Card">The card that was found.</param>
/// <param name="Projection">Card frame to photo and back.</param>
/// <param name="Camera">Where the camera stood.</param>
/// <param name="Marks">Marks in the free zone, sorted by u; may be empty.</param>
/// <param name="Doubtful">Spots that may be marks; the user can name them as such.</param>
/// <param name="Quality">How good the photo is.</param>
/// <param name="Warnings">What the user should know.</param>
public sealed record PhotoMeasurement(
    PhotoSize Photo,
    CardSighting Card,
    ICardProjection Projection,
    CameraStand Camera,
    IReadOnlyList<Mark> Marks,
    IReadOnlyList<DoubtfulSpot> Doubtful,
    PhotoQuality Quality,
    IReadOnlyList<Warning> Warnings)
{
    /// <summary>Name of the camera's profile that was used; null for none.</summary>
    public string? CameraProfile { get; init; }

    /// <summary>Why the profile that was named was not used: the card shows another lens; null when it was used, or none was named.</summary>
    public string? CameraNotUsed => Warnings.FirstOrDefault(w => w.Code == LensChoice.Differs)?.Message;
}

/// <summary>How a card was seen.</summary>
/// <param name="Kind">Name of its kind.</param>
/// <param name="ZoneSide">Side of its free zone.</param>
/// <param name="MarkersSeen">Markers recognised.</param>
/// <param name="PixelsPerMm">Scale at the card's centre (geometric mean of both directions).</param>
/// <param name="Tilt">Angle between the card's normal and the line of sight.</param>
/// <param name="ResidualPx">Root mean square distance of the card's printed edges from their fitted places, px.</param>
public sealed record CardSighting(string Kind, Length ZoneSide, int MarkersSeen, double PixelsPerMm, Angle Tilt, double ResidualPx);
