using System.Globalization;
using MarkReader.Quantities;

namespace MarkReader.Drawing.Overlays.Parts;

/// <summary>The words and numbers of an overlay.</summary>
internal static class Words
{
    public static string Title(OverlayContent content) => content switch
    {
        OverlayContent.Aiming => "Near mark, far mark and aim point",
        OverlayContent.Leg l => l.Title,
        OverlayContent.Marks m => m.Items.Count == 1 ? "One mark" : $"{m.Items.Count} marks",
        _ => string.Empty,
    };

    public static string Description(OverlayContent content) => content switch
    {
        OverlayContent.Aiming a =>
            $"Near mark at {Point(a.Near.Centre.Point)}, far mark at {Point(a.Far.Centre.Point)}. "
            + $"Aim point at {Point(a.Aim.Point)}, {Distance(a.Near.Centre.Point, a.Aim.Point)} from the near mark; {Region(a.Aim)}",
        OverlayContent.Leg l => l.Description,
        OverlayContent.Marks m => string.Join(" ", m.Items.Select((mark, i) =>
            $"Mark {i + 1} at {Point(mark.Centre.Point)}, diameter {Number(mark.Diameter.Millimetres, 2)} mm.")),
        _ => string.Empty,
    };

    public static string Distance(CardPoint from, CardPoint to) => Number(from.DistanceTo(to), 2) + " mm";

    public static string FromNear(OverlayContent.Aiming aiming, CardPoint to) => Distance(aiming.Near.Centre.Point, to) + " from near";

    public static string Pair(CardPoint point) => $"{Number(point.U, 2)}, {Number(point.V, 2)} mm";

    private static string Point(CardPoint point) => $"u {Number(point.U, 2)} mm, v {Number(point.V, 2)} mm";

    private static string Region(MeasuredPoint aim)
    {
        Ellipse ellipse = aim.Covariance.Ellipse95();
        return $"the region that holds it with 95 % has semi-axes of {Number(ellipse.SemiMajor, 2)} mm and {Number(ellipse.SemiMinor, 2)} mm.";
    }

    /// <summary>A number with a true minus sign and no minus zero.</summary>
    private static string Number(double value, int decimals)
    {
        double rounded = Math.Round(value, decimals);
        string digits = Math.Abs(rounded).ToString(decimals == 1 ? "0.#" : "0.00", CultureInfo.InvariantCulture);
        return rounded < 0 ? "\u2212" + digits : digits;
    }
}
