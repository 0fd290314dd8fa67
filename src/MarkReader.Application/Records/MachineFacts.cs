using System.Globalization;
using MarkReader.Alignment.Visits;
using MarkReader.Application.Texts;
using MarkReader.Drawing.Documents;
using MarkReader.Quantities;

namespace MarkReader.Application.Records;

/// <summary>The machine of a visit as facts.</summary>
internal static class MachineFacts
{
    public static IReadOnlyList<DocumentFact> Of(VisitSetup setup, RecordFormat format)
    {
        string Mm(Length length) => format.Short(length.Millimetres);
        List<DocumentFact> facts = [.. setup.Legs.Select(leg => new DocumentFact(
            RecordTexts.Say("MachineLeg", leg.Name),
            RecordTexts.Say(
                "MachineLegText",
                Mm(leg.Setup.Near.Path),
                Mm(leg.Setup.Far.Path),
                Mm(leg.Setup.Near.PathUncertainty),
                format.Number(leg.Setup.Leg.Incidence.Degrees, 0),
                format.WithUnit(leg.Setup.Tolerance.Millimetres, 2),
                string.Join(", ", leg.Setup.Frame.Screws),
                format.Short(leg.Setup.Frame.Pitch))))];
        if (setup.Bed is { } bed)
            facts.Add(new(RecordTexts.Get("MachineBed"), RecordTexts.Say("MachineBedText", Mm(bed.Travels.X), Mm(bed.Travels.Y), format.WithUnit(bed.Tolerance.Millimetres, 2))));
        if (setup.Aperture is { Centre.Point: var centre } aperture)
        {
            facts.Add(new(RecordTexts.Get("MachineAperture"), CommaPairs.Apart(RecordTexts.Say(
                "MachineApertureText", format.SignedLength(centre.U, 2), format.SignedLength(centre.V, 2), format.UnitName, format.WithUnit(aperture.Tolerance.Millimetres, 2), Mm(aperture.Diameter), Mm(aperture.BeamDiameter)))));
        }

        if (setup.Stock.Count > 0)
        {
            facts.Add(new(RecordTexts.Get("MachineWashers"), string.Join("; ", setup.Stock.Select(s =>
                format.ShortNumber(s.Thickness.Millimetres) + (s.Count is { } count ? string.Create(CultureInfo.InvariantCulture, $" (×{count})") : ""))) + " " + format.UnitName));
        }

        return facts;
    }
}
