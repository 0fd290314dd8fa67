using System.Globalization;
using MarkReader.Alignment.Shims;
using MarkReader.Application.Texts;
using MarkReader.Quantities;

namespace MarkReader.Application.Shims;

/// <summary>What is taken for granted of washers and sheets.</summary>
public static class UsualStock
{
    // A thickness read off a calliper to ±0.05 mm, or foil that keeps its nominal thickness within a tenth.
    private const double CalliperHalfWidth = 0.05, FoilPart = 0.1;

    private const double SameThickness = 1e-6;

    /// <summary>ISO 7089 washers M2 to M8, as many as needed; sizes of one thickness are one item.</summary>
    public static IReadOnlyList<StockItem> Washers =>
    [
        .. Iso7089.Washers.GroupBy(w => (w.Thickness, w.Thickest)).Select(alike => alike.First().InStock() with { Name = InputTexts.Get("usualStock.washer") + string.Join(InputTexts.Get("usualStock.or"), alike.Select(w => w.Size)) }),
    ];

    /// <summary>A piece of which only the thickness is known.</summary>
    /// <param name="thickness">mm, finite.</param>
    /// <param name="count">How many there are; null for as many as needed.</param>
    /// <remarks>
    /// With the thickness of an ISO 7089 washer its uncertainty is the standard's; else rectangular with a half-width of 0.05 mm, a tenth of the
    /// thickness below 0.5 mm (JCGM 100:2008, 4.3.7).
    /// </remarks>
    public static StockItem Piece(double thickness, int? count = null)
    {
        StockItem? washer = Washers.FirstOrDefault(w => Math.Abs(w.Thickness.Millimetres - thickness) < SameThickness);
        Length uncertainty = washer?.Uncertainty ?? Length.FromMillimetres(Math.Min(CalliperHalfWidth, FoilPart * Math.Abs(thickness)) / Math.Sqrt(3));
        return new(thickness.ToString("0.0##", CultureInfo.InvariantCulture) + " mm", Length.FromMillimetres(thickness), uncertainty, count);
    }
}
