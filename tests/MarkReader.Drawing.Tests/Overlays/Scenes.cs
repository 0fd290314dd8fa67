using MarkReader.Drawing.Overlays;
using MarkReader.Drawing.Tests.Support;
using MarkReader.Quantities;

namespace MarkReader.Drawing.Tests.Overlays;

/// <summary>Scenes of a plate card for the tests.</summary>
internal static class Scenes
{
    public const double Zone = 26;

    public static readonly PhotoSize Photo = new(1600, 1200);

    public static readonly (double PixelsPerMm, double Tilt, double Turn) Pose = (22, 35, 14);

    public static readonly MeasuredPoint Near = new(new(1.5, -1), Covariance2.Isotropic(0.01));

    public static readonly MeasuredPoint Far = new(new(7, 4), Covariance2.Isotropic(0.01));

    public static DrawnMark Mark(double u, double v, double diameter = 2.4, double sigma = 0.01) =>
        new(new(new(u, v), Covariance2.Isotropic(sigma)), Length.FromMillimetres(diameter));

    public static DrawnMark Mark(MeasuredPoint point, double diameter = 2.4) => new(point, Length.FromMillimetres(diameter));

    /// <summary>The tilted card with near and far mark and an aim point at this share of their distance beyond the near one.</summary>
    public static OverlayScene Aiming(double ratio = 0.8, PlaneView? view = null)
    {
        CardPoint aim = Near.Point - (ratio * (Far.Point - Near.Point));
        return Of(new OverlayContent.Aiming(Mark(Near), Mark(Far), new(aim, new(0.09, 0.03, 0.04))), view);
    }

    public static OverlayScene Of(OverlayContent content, PlaneView? view = null) =>
        new(Photo, view ?? PlaneView.Of(Photo, Pose), Length.FromMillimetres(Zone), content);

    public static OverlayLine[] Lines(this OverlayDrawing drawing, string part) => [.. drawing.Primitives.OfType<OverlayLine>().Where(l => l.Part == part)];

    public static OverlayText[] Texts(this OverlayDrawing drawing) => [.. drawing.Primitives.OfType<OverlayText>()];

    public static IEnumerable<PixelPoint> Points(this OverlayPrimitive primitive) => primitive switch
    {
        OverlayLine line => line.Points,
        OverlayArea area => area.Points,
        OverlayText text => [text.Start],
        _ => throw new ArgumentOutOfRangeException(nameof(primitive)),
    };
}
