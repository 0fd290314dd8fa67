using MarkReader.Alignment.Aiming;
using MarkReader.Imaging.Marks;
using MarkReader.Imaging.Pipeline;
using MarkReader.Quantities;

namespace MarkReader.Application.Aiming;

/// <summary>The aim point of a leg with what it was worked out from.</summary>
/// <param name="Leg">The leg and its stations.</param>
/// <param name="Near">The near mark, as measured in the near photo (or in the one photo of both).</param>
/// <param name="Far">The far mark.</param>
/// <param name="Solution">Aim point, slope and their covariances.</param>
/// <param name="FarView">The photo with the far mark, on which the aim is drawn.</param>
/// <param name="NearView">The photo with the near mark; null when one photo shows both.</param>
/// <param name="Warnings">What the user should know, from the photos, the choice of marks and the fit.</param>
public sealed record AimFinding(
    CheckedLeg Leg,
    Mark Near,
    Mark Far,
    AimSolution Solution,
    PhotoMeasurement FarView,
    PhotoMeasurement? NearView,
    IReadOnlyList<Warning> Warnings)
{
    /// <summary>Where the aim point appears in the far photo, px; it may lie outside the picture.</summary>
    public PixelPoint AimInPhoto => FarView.Projection.ToPhoto(Solution.Aim.Point);

    /// <summary>Where the near mark appears in the far photo, px.</summary>
    public PixelPoint NearInPhoto => FarView.Projection.ToPhoto(Near.Centre.Point);
}
