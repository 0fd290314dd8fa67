using System.Globalization;
using MarkReader.Imaging.Fiducials;
using MarkReader.Imaging.Marks;
using MarkReader.Imaging.Rectification;
using MarkReader.Quantities;

namespace MarkReader.Imaging.Pipeline;

/// <summary>What the user should know about a photo that was measured, each with what to do.</summary>
internal static class PhotoWarnings
{
    private const double CoarseScale = 8;
    private const double SteepTilt = 50;
    private const double LargeResidual = 0.6;

    public static IReadOnlyList<Warning> Of(FoundCard found, RegisteredCard card, CardSighting sighting, IReadOnlyList<Mark> marks)
    {
        List<Warning> warnings = [];
        if (marks.Count == 0)
            warnings.Add(new("noMark", "No mark is seen in the card's free zone: check that the pulse left a mark on the tape, and take the photo again in even light."));
        if (found.OtherCards > 0)
            warnings.Add(new("otherCards", "Another card is in view; the one with the most markers was measured: cover the other."));
        if (card.PixelsPerMm < CoarseScale)
            warnings.Add(new("coarse", string.Create(CultureInfo.InvariantCulture, $"The card is small in the photo ({card.PixelsPerMm:0.0} px/mm): move closer.")));
        if (sighting.Tilt.Degrees > SteepTilt)
            warnings.Add(new("steep", string.Create(CultureInfo.InvariantCulture, $"The card is seen at {sighting.Tilt.Degrees:0} degrees: hold the phone more squarely over it.")));
        if (sighting.MarkersSeen < 6)
            warnings.Add(new("fewMarkers", string.Create(CultureInfo.InvariantCulture, $"Only {sighting.MarkersSeen} of {card.Kind.Markers.Count} markers are seen: clear the card's rim.")));
        if (card.Residual > LargeResidual)
            warnings.Add(new("residual", string.Create(CultureInfo.InvariantCulture, $"The card's edges lie {card.Residual:0.0} px from where a flat card would show them: tape it flat.")));
        return warnings;
    }
}
