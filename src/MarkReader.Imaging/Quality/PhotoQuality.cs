using MarkReader.Quantities;

namespace MarkReader.Imaging.Quality;

/// <summary>How good a photo of a card is for measuring marks.</summary>
/// <param name="PixelsPerMm">Scale at the card's centre.</param>
/// <param name="Tilt">Angle between the card's normal and the line of sight.</param>
/// <param name="BlurPx">Standard deviation of the blur of printed edges, px, in the direction in which it is larger; a sharp photo has 0.5 to 1.2.</param>
/// <param name="PaperLight">Median light of the card's white paper, 0 (black) to 1 (the brightest that the photo can hold), linear.</param>
/// <param name="ClippedShare">Part of the card's area that is as bright as the photo can hold, 0 to 1.</param>
/// <param name="Noise">Standard deviation of a pixel of the free zone, relative to its light; fine texture of the tape is part of it.</param>
/// <param name="Glare">Light that mirrors on the tape.</param>
/// <param name="Unevenness">1 − darkest over brightest of the card's white paper, 0 for even light.</param>
/// <param name="ShadowStep">Light on the darker side over that on the brighter side of a shadow's edge across the zone; 1 when there is none.</param>
/// <param name="MarkersSeen">Markers recognised.</param>
/// <param name="MarkersTotal">Markers printed.</param>
/// <param name="ResidualPx">Root mean square distance of the card's printed edges from their fitted places, px.</param>
public sealed record PhotoQuality(
    double PixelsPerMm,
    Angle Tilt,
    double BlurPx,
    double PaperLight,
    double ClippedShare,
    double Noise,
    Glare Glare,
    double Unevenness,
    double ShadowStep,
    int MarkersSeen,
    int MarkersTotal,
    double ResidualPx);

/// <summary>Where something is, as seen in the photo as displayed.</summary>
public enum PhotoSide
{
    /// <summary>On no side in particular.</summary>
    Middle,
    Left,
    Right,
    Upper,
    Lower,
}

/// <summary>The part of the free zone that is washed out.</summary>
/// <param name="Share">0 to 1.</param>
/// <param name="Side">On which side of the zone most of it lies.</param>
public sealed record Glare(double Share, PhotoSide Side);
