using MarkReader.Alignment.Legs;
using MarkReader.Alignment.Visits;

namespace MarkReader.Application.Machines.Form;

/// <summary>Which fields the form has, and where in a document each stands. Bounds are those of the checks behind.</summary>
internal static class FormSections
{
    private const double Bound = 1e6;

    /// <summary>Standard uncertainties of path lengths that are offered, mm.</summary>
    public static IReadOnlyList<double> Uncertainties { get; } = [0.5, 1, 2, 5];

    /// <summary>Angles at which targets stand that are offered, degrees.</summary>
    public static IReadOnlyList<double> Incidences { get; } = [0, 45, -45];

    public static IReadOnlyList<string> Folds { get; } = ["left", "right"];

    public static IReadOnlyList<FormSection> All { get; } =
    [
        new WholeSection(
            new WordPart("name", "name", "the name"),
            new WashersPart(),
            new NumberPart("pulseScatter", "pulseScatter", Length("the scatter from pulse to pulse", 0, 5, "give the standard deviation of marks of one station, or leave it blank")),
            new NumberPart("remindDays", "remindDays", new("the time to the next visit", 1, 3650, "give whole days, or leave it blank for no reminder") { Unit = "days" })),
        Leg(VisitLeg.One),
        Leg(VisitLeg.Two),
        Leg(VisitLeg.Three),
        new FieldSection(
            "bed",
            new NumberPart("bed-x", "x", Length("the head's travel", 10, 20_000, "measure how far the head travels along the gantry"), required: true),
            new NumberPart("bed-y", "y", Length("the gantry's travel", 10, 20_000, "measure how far the gantry travels"), required: true),
            new NumberPart("bed-tolerance", "tolerance", Length("the tolerance over the bed", 0.01, 100, "say how far apart two marks over the bed may lie"))),
        new FieldSection(
            "aperture",
            new NumberPart("aperture-diameter", "diameter", Length("the opening's diameter", 0.1, 1000, "measure across the opening that the beam enters")),
            new NumberPart("aperture-beamDiameter", "beamDiameter", Length("the beam's diameter", 0.01, 1000, "take it from the tube's data sheet, or leave it blank")),
            new NumberPart("aperture-tolerance", "tolerance", Length("the tolerance of centring", 0.01, 100, "say how far from the opening's centre the beam may pass; less than half its diameter")),
            new NumberPart("aperture-u", "u", Length("the centre's place to the right", -50, 50, "read it on the head's card, from the card's centre")),
            new NumberPart("aperture-v", "v", Length("the centre's place upwards", -50, 50, "read it on the head's card, from the card's centre")),
            new NumberPart("aperture-uncertainty", "uncertainty", Length("the centre's uncertainty", 0, 50, "say how well its place is known, or leave it blank"))),
    ];

    private static LegSection Leg(string name)
    {
        string leg = "leg" + name;
        return new(
            leg,
            name,
            new PathsPart(leg),
            new OfferedPart(leg + "-pathUncertainty", "pathUncertainty", Uncertainties, Length("the path lengths' uncertainty", 0, Bound, "say how far off a length may usually be")),
            new OfferedPart(leg + "-incidenceDegrees", "incidenceDegrees", Incidences, new("the target's angle", -LegChecks.LargestIncidence, LegChecks.LargestIncidence, "give the angle between the beam and a line square to the target, 0 or 45 usually") { Unit = "degrees" }),
            new NumberPart(leg + "-tolerance", "tolerance", Length("the tolerance", 0.001, 100, "say how far apart the near and the far mark may lie")),
            new NumberPart(leg + "-targetRadius", "targetRadius", Length("the target's radius", 1, 200, "say how far from the target's centre a mark may lie and still be seen")),
            new NumberPart(leg + "-pivotOffset", "pivotOffset", Length("the pivot offset", -Bound, Bound, "leave it blank unless you know it")),
            new NumberPart(leg + "-pivotUncertainty", "pivotUncertainty", Length("the pivot offset's uncertainty", 0, Bound, "leave it blank unless you know it")),
            new CornersPart(leg),
            new NumberPart(leg + "-arm", "frame.arm", Length("the arm", 3, 500, "measure between the middles of two neighbouring contacts")),
            new ThreadPart(leg),
            new WordPart(leg + "-fold", "frame.fold", "the side to which the beam is turned", Folds, blank: "unknown"));
    }

    private static NumberRule Length(string what, double least, double most, string hint) => new(what, least, most, hint);
}
