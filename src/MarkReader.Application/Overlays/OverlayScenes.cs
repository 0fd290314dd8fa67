using MarkReader.Application.Aiming;
using MarkReader.Drawing.Overlays;
using MarkReader.Imaging.Marks;
using MarkReader.Imaging.Pipeline;

namespace MarkReader.Application.Overlays;

/// <summary>What is drawn over a photo, from what was measured in it.</summary>
public static class OverlayScenes
{
    /// <summary>Near mark, far mark and aim point, over the photo with the far mark.</summary>
    public static OverlayScene Of(AimFinding finding) => new(
        finding.FarView.Photo,
        finding.FarView.Projection,
        finding.FarView.Card.ZoneSide,
        new OverlayContent.Aiming(Drawn(finding.Near), Drawn(finding.Far), finding.Solution.Aim));

    /// <summary>The marks of one photo.</summary>
    public static OverlayScene Of(PhotoMeasurement measurement) => new(
        measurement.Photo,
        measurement.Projection,
        measurement.Card.ZoneSide,
        new OverlayContent.Marks([.. measurement.Marks.Select(Drawn)]));

    private static DrawnMark Drawn(Mark mark) => new(mark.Centre, mark.Diameter);
}
