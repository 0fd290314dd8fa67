using MarkReader.Alignment.Survey;
using MarkReader.Alignment.Visits;
using MarkReader.Application.Reports;
using MarkReader.Application.Texts;
using MarkReader.Practice.Machines;

namespace MarkReader.Application.Practising;

/// <summary>A practice visit as a visit file, which advise reads.</summary>
public static class PracticeVisitFile
{
    public static string Write(PracticeSession session) => ReportJson.Write(new { machine = Machine(session.Setup, session.Machine, session.Request), events = session.Events.Select(Event) });

    /// <summary>The machine alone, as a machine's document.</summary>
    internal static string WriteMachine(VisitSetup setup, StatedMachine machine, PracticeRequest request) => ReportJson.Write(Machine(setup, machine, request));

    private static object Machine(VisitSetup setup, StatedMachine machine, PracticeRequest request) => new
    {
        name = InputTexts.Say("practiceVisitFile.practiceMachine", request.Seed),
        legs = new[] { Leg(setup.Legs[0], machine.LegOne.Frame), Leg(setup.Legs[1], machine.LegTwo.Frame) },
        bed = new { x = setup.Bed!.Travels.X.Millimetres, y = setup.Bed.Travels.Y.Millimetres, tolerance = setup.Bed.Tolerance.Millimetres },
        aperture = new { tolerance = setup.Aperture!.Tolerance.Millimetres },
        washers = setup.Stock.Select(s => s.Thickness.Millimetres),
        pulseScatter = request.Mark,
    };

    private static object Leg(VisitLeg leg, StatedFrame frame) => new
    {
        name = leg.Name,
        nearPath = leg.Setup.Near.Path.Millimetres,
        farPath = leg.Setup.Far.Path.Millimetres,
        pathUncertainty = leg.Setup.Near.PathUncertainty.Millimetres,
        incidenceDegrees = leg.Setup.Leg.Incidence.Degrees,
        tolerance = leg.Setup.Tolerance.Millimetres,
        frame = new
        {
            pivot = frame.Pivot is { } pivot ? SurveyReport.Name(pivot) : null,
            screws = frame.Screws.Select(s => new { name = s.Name, at = SurveyReport.Name(s.At) }),
            arm = frame.Arm.Millimetres,
            pitch = frame.Pitch.Millimetres,
        },
    };

    private static object Event(VisitEvent e) => e switch
    {
        VisitEvent.Mark { Gantry: { } gantry } mark =>
            new { kind = "mark", leg = mark.Leg, path = mark.Path, gantry = gantry.Millimetres, u = mark.At.Point.U, v = mark.At.Point.V, covariance = MarkReport.Matrix(mark.At.Covariance) },
        VisitEvent.Mark mark => new { kind = "mark", leg = mark.Leg, path = mark.Path, u = mark.At.Point.U, v = mark.At.Point.V, covariance = MarkReport.Matrix(mark.At.Covariance) },
        VisitEvent.Turn turn => new { kind = "turn", leg = turn.Leg, screw = turn.Screw, turns = turn.Turns },
        VisitEvent.Survey survey => Survey(survey.Seen),
        VisitEvent.Shim shim => new { kind = "shim", corner = SurveyReport.Name(shim.Corner), height = shim.Height.Millimetres },
        VisitEvent.MoveTarget move => new { kind = "moveTarget", u = move.By.U, v = move.By.V },
        VisitEvent.RaiseTube raise => new { kind = "raiseTube", height = raise.Height.Millimetres },
        VisitEvent.Realign realign => new { kind = "realign", leg = realign.Leg, at = SurveyReport.Name(realign.At) },
        VisitEvent.Disturbed disturbed => new { kind = "disturbed", leg = disturbed.Leg },
        VisitEvent.Skip skip => new { kind = "skip", step = skip.Step.Name(), reason = skip.Reason },
        VisitEvent.Again again => new { kind = "again", step = again.Step.Name() },
        _ => throw new ArgumentException("Unknown event.", nameof(e)),
    };

    private static object Survey(SurveyMark mark) =>
        new { kind = "survey", x = mark.X.Millimetres, y = mark.Y.Millimetres, u = mark.Mark.Point.U, v = mark.Mark.Point.V, covariance = MarkReport.Matrix(mark.Mark.Covariance) };
}
