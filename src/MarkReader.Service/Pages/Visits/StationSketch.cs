using System.Globalization;
using MarkReader.Alignment.Advice;
using MarkReader.Alignment.Visits;
using MarkReader.Service.Texts;
using Microsoft.Extensions.Localization;

namespace MarkReader.Service.Pages.Visits;

/// <summary>Where the carriages stand for a pulse, seen from above.</summary>
/// <param name="Gantry">Part of the gantry's travel from its near end, 0 to 1.</param>
/// <param name="Head">Part of the head's travel from its near end, 0 to 1; null when the tape is on mirror two.</param>
/// <param name="Words">The same in words.</param>
public sealed record StationSketch(double Gantry, double? Head, string Words)
{
    internal static StationSketch? Of(VisitAction pulse, VisitSetup setup, IStringLocalizer<VisitTexts> t)
    {
        switch (pulse)
        {
            case VisitAction.Survey survey:
                return At(survey.Y.Millimetres / setup.Bed!.Travels.Y.Millimetres, survey.X.Millimetres / setup.Bed.Travels.X.Millimetres, t);
            case VisitAction.Fire { Leg: VisitLeg.One } fire:
                return At(Part(fire, setup), null, t);
            case VisitAction.Fire { Leg: VisitLeg.Two } fire:
                double gantry = fire.Gantry is { } y && setup.Bed is { } bed ? y.Millimetres / bed.Travels.Y.Millimetres : 0;
                return At(gantry, Part(fire, setup), t);
            default:
                return null;
        }
    }

    private static double Part(VisitAction.Fire fire, VisitSetup setup)
    {
        LegSetup leg = setup.Legs.First(l => l.Name == fire.Leg).Setup;
        return (fire.Path - leg.Near.Path.Millimetres) / (leg.Far.Path - leg.Near.Path).Millimetres;
    }

    private static StationSketch At(double gantry, double? head, IStringLocalizer<VisitTexts> t)
    {
        string Percent(double part) => Math.Round(100 * part).ToString("0", CultureInfo.InvariantCulture);
        gantry = Math.Clamp(gantry, 0, 1);
        return head is { } h
            ? new(gantry, Math.Clamp(h, 0, 1), t["sketch.head", Percent(gantry), Percent(h)])
            : new(gantry, null, t["sketch.leg1", Percent(gantry)]);
    }
}
