using MarkReader.Imaging.Fiducials;
using MarkReader.Imaging.Marks;
using MarkReader.Imaging.Quality;
using MarkReader.Imaging.Texts;
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
    public static IReadOnlyList<Warning> Of(FoundCard found, PhotoQuality quality, IReadOnlyList<Mark> marks, IReadOnlyList<DoubtfulSpot> doubtful, IReadOnlyList<MarkObjection> tapped)
    {
        List<Warning> warnings = [];
        if (doubtful.Count > 0)
            warnings.Add(new("doubtfulSpots", doubtful.Count == 1 ? ImagingTexts.Get("photoWarnings.darkSpotMayBeMark") : ImagingTexts.Say("photoWarnings.darkSpotsMayBeMarks", doubtful.Count)));
        else if (marks.Count == 0)
            warnings.Add(new("noMark", ImagingTexts.Get("photoWarnings.noMarkSeenInCard")));
        if (tapped.Count > 0)
            warnings.Add(new("unlikelyMark", ImagingTexts.Say("photoWarnings.whatWasTappedHardlyLooks", string.Join(", ", tapped.Select(o => o.Words())))));
        if (found.OtherCards > 0)
            warnings.Add(new("otherCards", ImagingTexts.Get("photoWarnings.anotherCardInViewOne")));
        warnings.AddRange(OfGeometry(quality));
        warnings.AddRange(OfLight(quality));
        return warnings;
    }

    private static IEnumerable<Warning> OfGeometry(PhotoQuality quality)
    {
        if (quality.PixelsPerMm < CoarseScale)
            yield return new("coarse", ImagingTexts.Say("photoWarnings.cardSmallInPhotoPx", quality.PixelsPerMm));
        if (quality.Tilt.Degrees > SteepTilt)
            yield return new("steep", ImagingTexts.Say("photoWarnings.cardSeenAtDegreesHold", quality.Tilt.Degrees));
        if (quality.MarkersSeen < FewMarkers)
            yield return new("fewMarkers", ImagingTexts.Say("photoWarnings.onlyMarkersSeenClearCard", quality.MarkersSeen, quality.MarkersTotal));
        if (quality.BlurPx > LargeBlurPx && quality.BlurPx > LargeBlurMm * quality.PixelsPerMm)
            yield return new("unsharp", ImagingTexts.Say("photoWarnings.photoBlurredPxHoldStill", quality.BlurPx));
        if (quality.ResidualPx > LargeResidual)
            yield return new("residual", ImagingTexts.Say("photoWarnings.cardEdgesLiePxFrom", quality.ResidualPx));
    }

    private static IEnumerable<Warning> OfLight(PhotoQuality quality)
    {
        // The bright side of a deep shadow may look like a little glare, and the edge of much glare like a shadow's.
        bool glare = quality.Glare.Share > (quality.ShadowStep < DeepShadow ? GlareBesideShadow : MuchGlare);
        if (quality.PaperLight < Dark)
            yield return new("dark", ImagingTexts.Say("photoWarnings.photoDarkWhitePaperAt", 100 * quality.PaperLight));
        else if (quality.ClippedShare > MuchClipped)
            yield return new("overexposed", ImagingTexts.Say("photoWarnings.cardBurntOutLessLight", 100 * quality.ClippedShare));
        else if (glare)
            yield return new("glare", ImagingTexts.Say("photoWarnings.glareWashesOutZone", 100 * quality.Glare.Share, Lamp(quality.Glare.Side)));
        if (quality.Noise > Noisy)
            yield return new("noisy", ImagingTexts.Say("photoWarnings.photoGrainyMoreLight", 100 * quality.Noise));
        if (quality.ShadowStep < ShadowEdge && !glare)
            yield return new("shadowEdge", ImagingTexts.Say("photoWarnings.edgeShadowCrossesZoneLight", 100 * quality.ShadowStep));
    }

    private static string Lamp(PhotoSide side) => side switch
    {
        PhotoSide.Left => ImagingTexts.Get("photoWarnings.turnOffLampOnLeft"),
        PhotoSide.Right => ImagingTexts.Get("photoWarnings.turnOffLampOnRight"),
        PhotoSide.Upper => ImagingTexts.Get("photoWarnings.turnOffLampAtUpper"),
        PhotoSide.Lower => ImagingTexts.Get("photoWarnings.turnOffLampAtLower"),
        _ => ImagingTexts.Get("photoWarnings.turnOffLampOrTilt"),
    };
}
