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

    public static IReadOnlyList<FormSection> All =>
    [
        new WholeSection(
            new WordPart("name", "name", MachineTexts.Get("formSections.name")),
            new WashersPart(),
            new NumberPart("pulseScatter", "pulseScatter", Length(MachineTexts.Get("formSections.scatterFromPulsePulse"), 0, 5, MachineTexts.Get("formSections.giveStandardDeviationMarksOne"))),
            new NumberPart("remindDays", "remindDays", new(MachineTexts.Get("formSections.timeNextVisit"), 1, 3650, MachineTexts.Get("formSections.giveWholeDaysOrLeave")) { Unit = MachineTexts.Get("formSections.days") })),
        Leg(VisitLeg.One),
        Leg(VisitLeg.Two),
        Leg(VisitLeg.Three),
        new FieldSection(
            "bed",
            new NumberPart("bed-x", "x", Length(MachineTexts.Get("formSections.headTravel"), 10, 20_000, MachineTexts.Get("formSections.measureHowFarHeadTravels")), required: true),
            new NumberPart("bed-y", "y", Length(MachineTexts.Get("formSections.gantryTravel"), 10, 20_000, MachineTexts.Get("formSections.measureHowFarGantryTravels")), required: true),
            new NumberPart("bed-tolerance", "tolerance", Length(MachineTexts.Get("formSections.toleranceOverBed"), 0.01, 100, MachineTexts.Get("formSections.sayHowFarApartTwo")))),
        new FieldSection(
            "aperture",
            new NumberPart("aperture-diameter", "diameter", Length(MachineTexts.Get("formSections.openingDiameter"), 0.1, 1000, MachineTexts.Get("formSections.measureAcrossOpeningThatBeam"))),
            new NumberPart("aperture-beamDiameter", "beamDiameter", Length(MachineTexts.Get("formSections.beamDiameter"), 0.01, 1000, MachineTexts.Get("formSections.takeFromTubeDataSheet"))),
            new NumberPart("aperture-tolerance", "tolerance", Length(MachineTexts.Get("formSections.toleranceCentring"), 0.01, 100, MachineTexts.Get("formSections.sayHowFarFromOpening"))),
            new NumberPart("aperture-u", "u", Length(MachineTexts.Get("formSections.centrePlaceRight"), -50, 50, MachineTexts.Get("formSections.readOnHeadCardFrom"))),
            new NumberPart("aperture-v", "v", Length(MachineTexts.Get("formSections.centrePlaceUpwards"), -50, 50, MachineTexts.Get("formSections.readOnHeadCardFrom"))),
            new NumberPart("aperture-uncertainty", "uncertainty", Length(MachineTexts.Get("formSections.centreUncertainty"), 0, 50, MachineTexts.Get("formSections.sayHowWellPlaceKnown")))),
    ];

    private static LegSection Leg(string name)
    {
        string leg = "leg" + name;
        return new(
            leg,
            name,
            new PathsPart(leg),
            new OfferedPart(leg + "-pathUncertainty", "pathUncertainty", Uncertainties, Length(MachineTexts.Get("formSections.pathLengthsUncertainty"), 0, Bound, MachineTexts.Get("formSections.sayHowFarOffLength"))),
            new OfferedPart(leg + "-incidenceDegrees", "incidenceDegrees", Incidences, new(MachineTexts.Get("formSections.targetAngle"), -LegChecks.LargestIncidence, LegChecks.LargestIncidence, MachineTexts.Get("formSections.giveAngleBetweenBeamAnd")) { Unit = "degrees" }),
            new NumberPart(leg + "-tolerance", "tolerance", Length(MachineTexts.Get("formSections.tolerance"), 0.001, 100, MachineTexts.Get("formSections.sayHowFarApartNear"))),
            new NumberPart(leg + "-targetRadius", "targetRadius", Length(MachineTexts.Get("formSections.targetRadius"), 1, 200, MachineTexts.Get("formSections.sayHowFarFromTarget"))),
            new NumberPart(leg + "-pivotOffset", "pivotOffset", Length(MachineTexts.Get("formSections.pivotOffset"), -Bound, Bound, MachineTexts.Get("formSections.leaveBlankUnlessYouKnow"))),
            new NumberPart(leg + "-pivotUncertainty", "pivotUncertainty", Length(MachineTexts.Get("formSections.pivotOffsetUncertainty"), 0, Bound, MachineTexts.Get("formSections.leaveBlankUnlessYouKnow"))),
            new CornersPart(leg),
            new NumberPart(leg + "-arm", "frame.arm", Length(MachineTexts.Get("formSections.arm"), 3, 500, MachineTexts.Get("formSections.measureBetweenMiddlesTwoNeighbouring"))),
            new ThreadPart(leg),
            new WordPart(leg + "-fold", "frame.fold", MachineTexts.Get("formSections.sideWhichBeamTurned"), Folds, blank: "unknown"));
    }

    private static NumberRule Length(string what, double least, double most, string hint) => new(what, least, most, hint);
}
