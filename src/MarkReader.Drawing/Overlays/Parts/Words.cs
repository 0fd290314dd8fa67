using System.Globalization;
using MarkReader.Quantities;
using static MarkReader.Quantities.Texts<MarkReader.Drawing.Texts.DrawingTexts>;

namespace MarkReader.Drawing.Overlays.Parts;

/// <summary>The words and numbers of an overlay.</summary>
internal static class Words
{
    public static string Outside => Get("overlay.outside");

    /// <summary>aim, near or far.</summary>
    public static string Part(string part) => Get("overlay." + part);

    public static string Title(OverlayContent content) => content switch
    {
        OverlayContent.Aiming => Get("overlay.aiming"),
        OverlayContent.Leg l => l.Title,
        OverlayContent.Marks m => m.Items.Count == 1 ? Get("overlay.oneMark") : Say("overlay.marks", m.Items.Count),
        _ => string.Empty,
    };

    public static string Description(OverlayContent content) => content switch
    {
        OverlayContent.Aiming a => Aiming(a, a.Aim.Covariance.Ellipse95()),
        OverlayContent.Leg l => l.Description,
        OverlayContent.Marks m => string.Join(" ", m.Items.Select((mark, i) =>
            Say("overlay.mark", i + 1, Point(mark.Centre.Point), Number(mark.Diameter.Millimetres, 2)))),
        _ => string.Empty,
    };

    public static string Distance(CardPoint from, CardPoint to) => Number(from.DistanceTo(to), 2) + " mm";

    public static string FromNear(OverlayContent.Aiming aiming, CardPoint to) => Say("overlay.fromNear", Distance(aiming.Near.Centre.Point, to));

    public static string Pair(CardPoint point) => $"{Number(point.U, 2)}, {Number(point.V, 2)} mm";

    private static string Point(CardPoint point) => $"u {Number(point.U, 2)} mm, v {Number(point.V, 2)} mm";

    private static string Aiming(OverlayContent.Aiming a, Ellipse region) => Say(
        "overlay.aimingMarks",
        Point(a.Near.Centre.Point),
        Point(a.Far.Centre.Point),
        Point(a.Aim.Point),
        Distance(a.Near.Centre.Point, a.Aim.Point),
        Number(region.SemiMajor, 2),
        Number(region.SemiMinor, 2));

    /// <summary>A number with a true minus sign and no minus zero.</summary>
    private static string Number(double value, int decimals)
    {
        double rounded = Math.Round(value, decimals);
        string digits = Math.Abs(rounded).ToString(decimals == 1 ? "0.#" : "0.00", CultureInfo.InvariantCulture);
        return rounded < 0 ? "\u2212" + digits : digits;
    }
}
