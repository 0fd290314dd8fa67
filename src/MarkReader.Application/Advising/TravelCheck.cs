using MarkReader.Alignment.Legs;
using MarkReader.Alignment.Visits;
using MarkReader.Quantities;
using static MarkReader.Quantities.Texts<MarkReader.Application.Texts.AdviceTexts>;

namespace MarkReader.Application.Advising;

/// <summary>Whether the bed's travels agree with the paths of the legs: leg 1 grows by the gantry's travel, leg 2 by the head's (common practice, no source).</summary>
internal static class TravelCheck
{
    // How well the bed's own travel is known, mm (common practice, no source).
    private const double TravelUncertainty = 1;

    // Of expanded uncertainties, 95 % (JCGM 100:2008, 6.3.3).
    private const double CoverageFactor = 2;

    /// <summary>One warning for each leg that does not agree; none without a bed.</summary>
    public static IReadOnlyList<Warning> Of(VisitSetup setup) => setup.Bed is not { } bed
        ? []
        : [.. setup.Legs.Select(leg => leg.Name switch
        {
            VisitLeg.One => Of(leg, bed.Travels.Y, Get("travel.gantry")),
            VisitLeg.Two => Of(leg, bed.Travels.X, Get("travel.head")),
            _ => null,
        }).OfType<Warning>()];

    private static Warning? Of(VisitLeg leg, Length travel, string carriage)
    {
        (Station near, Station far) = (leg.Setup.Near, leg.Setup.Far);
        double longer = (far.Path - near.Path).Millimetres;
        double allowed = CoverageFactor * Math.Sqrt(Square(near.PathUncertainty) + Square(far.PathUncertainty) + (TravelUncertainty * TravelUncertainty));
        return Math.Abs(longer - travel.Millimetres) <= allowed ? null : new("travelDisagrees", Say("warning.travel", leg.Name, longer, carriage, travel.Millimetres, allowed));
    }

    private static double Square(Length length) => length.Millimetres * length.Millimetres;
}
