using System.Globalization;
using MarkReader.Imaging.Fiducials;
using MarkReader.Imaging.Marks;
using MarkReader.Imaging.Quality;
using MarkReader.Quantities;

namespace MarkReader.Imaging.Pipeline;

/// <summary>What the user should know about a photo that was measured, each with what to do. A tidy photo has none.</summary>
internal static class PhotoWarnings
{
    /// <summary>px/mm: below it a mark of 2 mm has fewer than 16 px across, and its outline is no longer resolved.</summary>
    private const double CoarseScale = 8;

    /// <summary>Degrees: beyond it the far side of the card has less than two thirds of the near side's scale, and a bent card moves marks by its bend and more.</summary>
    private const double SteepTilt = 50;

    /// <summary>px: a fitted flat card leaves 0.1 to 0.3; more is a card that is not flat, a poor print or a lens that the model lacks.</summary>
    private const double LargeResidual = 0.6;

    /// <summary>Fewer markers than this leave the view of the card weakly held on one side.</summary>
    private const int FewMarkers = 6;

    /// <summary>px and mm, both exceeded: a phone's own blur is 0.5 to 1.5 px, and blur far below a mark's edge (about 0.15 mm) costs nothing.</summary>
    private const double LargeBlurPx = 2.5, LargeBlurMm = 0.08;

    /// <summary>Linear light of white paper below which few of the 256 steps of a photo are left for the burn: about 75 of 255 as stored.</summary>
    private const double Dark = 0.07;

    /// <summary>Part of the card that is clipped: white paper that is burnt out moves printed edges outwards.</summary>
    private const double MuchClipped = 0.25;

    /// <summary>Relative noise of one pixel: a faint mark is 0.1 darker than its tape.</summary>
    private const double Noisy = 0.12;

    /// <summary>Part of the free zone: a mark of 3 mm is 0.01 of a small card's zone.</summary>
    private const double MuchGlare = 0.03;

    /// <summary>Darker over brighter side: light that fades evenly stays above it, a shadow of a hand or a frame falls to 0.3 to 0.7.</summary>
    private const double ShadowEdge = 0.8;

    /// <summary>Beyond doubt a shadow; then glare has to cover this part of the zone to be the first thing to mend.</summary>
    private const double DeepShadow = 0.6, GlareBesideShadow = 0.1;

    /// <param name="tapped">What speaks against the marks that the user named.</param>
    public static IReadOnlyList<Warning> Of(FoundCard found, PhotoQuality quality, IReadOnlyList<Mark> marks, IReadOnlyList<DoubtfulSpot> doubtful, IReadOnlyList<string> tapped)
    {
        List<Warning> warnings = [];
        if (doubtful.Count > 0)
            warnings.Add(new("doubtfulSpots", doubtful.Count == 1 ? "A dark spot may be a mark: tap it if it is one." : Text($"{doubtful.Count} dark spots may be marks: tap those that are.")));
        else if (marks.Count == 0)
            warnings.Add(new("noMark", "No mark is seen in the card's free zone: check that the pulse left a mark on the tape, and take the photo again in even light."));
        if (tapped.Count > 0)
            warnings.Add(new("unlikelyMark", Text($"What was tapped hardly looks like a mark ({string.Join(", ", tapped)}): make sure that it is one, and do not rely on its uncertainty.")));
        if (found.OtherCards > 0)
            warnings.Add(new("otherCards", "Another card is in view; the one with marks was measured, or else the one with more markers: cover the other."));
        warnings.AddRange(OfGeometry(quality));
        warnings.AddRange(OfLight(quality));
        return warnings;
    }

    private static IEnumerable<Warning> OfGeometry(PhotoQuality quality)
    {
        if (quality.PixelsPerMm < CoarseScale)
            yield return new("coarse", Text($"The card is small in the photo ({quality.PixelsPerMm:0.0} px/mm): move closer."));
        if (quality.Tilt.Degrees > SteepTilt)
            yield return new("steep", Text($"The card is seen at {quality.Tilt.Degrees:0} degrees: hold the phone more squarely over it."));
        if (quality.MarkersSeen < FewMarkers)
            yield return new("fewMarkers", Text($"Only {quality.MarkersSeen} of {quality.MarkersTotal} markers are seen: clear the card's rim."));
        if (quality.BlurPx > LargeBlurPx && quality.BlurPx > LargeBlurMm * quality.PixelsPerMm)
            yield return new("unsharp", Text($"The photo is blurred ({quality.BlurPx:0.0} px): hold still and let the phone focus on the card."));
        if (quality.ResidualPx > LargeResidual)
            yield return new("residual", Text($"The card's edges lie {quality.ResidualPx:0.0} px from where a flat card would show them: tape it flat."));
    }

    private static IEnumerable<Warning> OfLight(PhotoQuality quality)
    {
        // The bright side of a deep shadow may look like a little glare, and the edge of much glare like a shadow's.
        bool glare = quality.Glare.Share > (quality.ShadowStep < DeepShadow ? GlareBesideShadow : MuchGlare);
        if (quality.PaperLight < Dark)
            yield return new("dark", Text($"The photo is dark (white paper at {100 * quality.PaperLight:0} % of the brightest): more light."));
        else if (quality.ClippedShare > MuchClipped)
            yield return new("overexposed", Text($"{100 * quality.ClippedShare:0} % of the card is burnt out: less light, or tap the card on the phone's screen before the shot."));
        else if (glare)
            yield return new("glare", Text($"Glare washes out {100 * quality.Glare.Share:0} % of the zone: {Lamp(quality.Glare.Side)}"));
        if (quality.Noise > Noisy)
            yield return new("noisy", Text($"The photo is grainy ({100 * quality.Noise:0} %): more light."));
        if (quality.ShadowStep < ShadowEdge && !glare)
            yield return new("shadowEdge", Text($"The edge of a shadow crosses the zone ({100 * quality.ShadowStep:0} % of the light on its dark side): light it evenly."));
    }

    private static string Lamp(PhotoSide side) => side switch
    {
        PhotoSide.Left => "turn off the lamp on the left.",
        PhotoSide.Right => "turn off the lamp on the right.",
        PhotoSide.Upper => "turn off the lamp at the upper side.",
        PhotoSide.Lower => "turn off the lamp at the lower side.",
        _ => "turn off the lamp, or tilt the phone a little.",
    };

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
