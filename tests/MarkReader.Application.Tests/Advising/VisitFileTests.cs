using System.Text;
using MarkReader.Alignment.Frames;
using MarkReader.Alignment.Survey;
using MarkReader.Alignment.Visits;
using MarkReader.Application.Advising;
using MarkReader.Application.Machines;
using MarkReader.Quantities;

namespace MarkReader.Application.Tests.Advising;

public sealed class VisitFileTests
{
    [Fact]
    public void Machine_and_events_of_the_contract_are_read()
    {
        Visit visit = Read(VisitTexts.Visit(
            VisitTexts.Machine,
            """{ "kind": "mark", "leg": "1", "path": 80, "u": 1.2, "v": -0.4, "uncertainty": 0.05 }""",
            """{ "kind": "turn", "leg": 1, "screw": "A", "turns": 0.125 }""",
            """{ "kind": "survey", "x": 0, "y": 400, "u": 0.1, "v": 0.6, "covariance": [[0.0025, 0.001], [0.001, 0.004]] }""",
            """{ "kind": "shim", "corner": "farRight", "height": 0.8 }""",
            """{ "kind": "moveTarget", "u": 0.5, "v": 0 }""",
            """{ "kind": "raiseTube", "height": 1.5 }""",
            """{ "kind": "realign", "leg": "2", "at": "far" }""")).ValueOrThrow();

        Assert.Empty(visit.Warnings);
        VisitLeg one = visit.Setup.Legs[0];
        Assert.Equal((80, 480, 2, 45), (one.Setup.Near.Path.Millimetres, one.Setup.Far.Path.Millimetres, one.Setup.Near.PathUncertainty.Millimetres, one.Setup.Leg.Incidence.Degrees));
        Assert.Equal(["A", "B"], one.Setup.Frame.Screws);
        Assert.Equal(0.7, one.Setup.Frame.Pitch);
        Assert.Equal(new Bed(Length.FromMillimetres(500), Length.FromMillimetres(400)), visit.Setup.Bed!.Travels);
        Assert.Equal([0.5, 0.8, 1.0, 1.6], visit.Setup.Stock.Select(s => s.Thickness.Millimetres));
        Assert.Equal(
        [
            new VisitEvent.Mark("1", 80, new(new(1.2, -0.4), Covariance2.Isotropic(0.05))),
            new VisitEvent.Turn("1", "A", 0.125),
            new VisitEvent.Survey(new(Length.Zero, Length.FromMillimetres(400), new(new(0.1, 0.6), new(0.0025, 0.001, 0.004)))),
            new VisitEvent.Shim(BedCorner.FarRight, Length.FromMillimetres(0.8)),
            new VisitEvent.MoveTarget(new(0.5, 0)),
            new VisitEvent.RaiseTube(Length.FromMillimetres(1.5)),
            new VisitEvent.Realign("2", GantryEnd.Far),
        ], visit.Events);
    }

    [Fact]
    public void What_may_be_left_out_is_taken_as_usual()
    {
        VisitSetup setup = Read("""{ "machine": { "legs": [ { "name": "2", "nearPath": 60, "farPath": 560 } ] } }""").ValueOrThrow().Setup;
        VisitLeg leg = Assert.Single(setup.Legs);
        Assert.Equal((1, 0, 0.5), (leg.Setup.Near.PathUncertainty.Millimetres, leg.Setup.Leg.Incidence.Degrees, leg.Setup.Tolerance.Millimetres));
        Assert.Equal(["A", "B"], leg.Setup.Frame.Screws);
        Assert.Equal(45, leg.Setup.Frame.Incidence.Degrees, 1e-9);
        Assert.Null(setup.Bed);
        Assert.Null(setup.Aperture);
    }

    [Fact]
    public void A_frame_can_have_three_screws_a_thread_and_a_known_response()
    {
        VisitLeg leg = Read("""
            { "machine": { "legs": [ { "name": "1", "nearPath": 80, "farPath": 480, "frame": { "thread": "M5", "fold": "left", "backlashDegrees": 12,
              "screws": [ { "name": "A", "at": "lowerRight" }, { "name": "B", "at": "upperLeft" }, { "name": "C", "at": "lowerLeft" } ],
              "response": [ { "screw": "A", "u": 46, "v": 1, "uncertainty": 2 } ] } } ] } }
            """).ValueOrThrow().Setup.Legs[0];
        Assert.Equal(["A", "B", "C"], leg.Setup.Frame.Screws);
        // ISO 262: M5 has a coarse pitch of 0.8 mm.
        Assert.Equal(0.8, leg.Setup.Frame.Pitch);
        Assert.Equal(FoldSide.Left, leg.Setup.Frame.Fold);
        Assert.Equal(12, leg.Setup.Habits.Backlash.Degrees, 1e-9);
        Assert.Equal(46, Assert.Single(leg.Setup.Known).U);
    }

    [Fact]
    public void A_misspelt_field_is_reported_and_not_used()
    {
        Visit visit = Read("""{ "machine": { "legs": [ { "name": "2", "nearPath": 60, "farPath": 560, "tolerence": 0.1 } ] } }""").ValueOrThrow();
        Warning warning = Assert.Single(visit.Warnings);
        Assert.Equal("fieldIgnored", warning.Code);
        Assert.Contains("'tolerence'", warning.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_mark_of_leg_2_with_the_gantry_elsewhere_is_left_out_and_said_so()
    {
        const string near = """{ "kind": "mark", "leg": "2", "path": 60, "gantry": 0, "u": 0, "v": 0, "uncertainty": 0.05 }""";
        const string far = """{ "kind": "mark", "leg": "2", "path": 560, "gantry": 400, "u": 3, "v": 0, "uncertainty": 0.05 }""";
        VisitAdvice advice = VisitTexts.Advise(VisitTexts.Visit($$"""{ "bed": { "x": 500, "y": 400 }, "legs": {{VisitTexts.Legs}} }""", near, far)).ValueOrThrow();
        Assert.Equal("gantryElsewhere", Assert.Single(advice.Warnings).Code);
        Assert.Null(advice.State.Legs["2"].Slope);
    }

    [Theory]
    // Leg 1 is 400 mm longer at its far end, leg 2 500 mm; 2·√(2² + 2² + 1²) = 6 mm of difference are allowed.
    [InlineData(500, 405)]
    [InlineData(500, 407, "Leg 1")]
    [InlineData(490, 400, "Leg 2")]
    [InlineData(400, 500, "Leg 1", "Leg 2")]
    public void A_bed_whose_travels_do_not_agree_with_the_paths_is_told_and_used(double x, double y, params string[] legs)
    {
        string machine = FormattableString.Invariant($$"""{ "bed": { "x": {{x}}, "y": {{y}} }, "legs": {{VisitTexts.Legs}} }""");
        Warning[] told = [.. VisitTexts.Advise(VisitTexts.Visit(machine)).ValueOrThrow().Warnings];
        Assert.All(told, w => Assert.Equal("travelDisagrees", w.Code));
        Assert.Equal(legs, told.Select(w => w.Message[..5]));
        Assert.Equal(told, MachineFile.Read(Encoding.UTF8.GetBytes(machine)).ValueOrThrow().Warnings);
    }

    public static TheoryData<string, string, string> Hostile => new()
    {
        { "VISIT_UNREADABLE", "", "not JSON" },
        { "VISIT_UNREADABLE", "{", "not JSON" },
        { "VISIT_UNREADABLE", "[]", "not an object" },
        { "VISIT_UNREADABLE", "{}", "no machine" },
        { "VISIT_UNREADABLE", """{ "machine": 3 }""", "not an object" },
        { "VISIT_UNREADABLE", """{ "machine": {} }""", "no 'legs'" },
        { "VISIT_UNREADABLE", """{ "machine": { "legs": [ {} ] } }""", "no 'name'" },
        { "VISIT_UNREADABLE", """{ "machine": { "legs": [ { "name": "1", "nearPath": "80", "farPath": 480 } ] } }""", "'nearPath'" },
        { "VISIT_UNREADABLE", """{ "machine": { "legs": [ { "name": "1", "nearPath": 1e300, "farPath": 480 } ] } }""", "'nearPath'" },
        { "VISIT_UNREADABLE", """{ "machine": { "legs": [ { "name": "1", "nearPath": 80, "farPath": 480, "incidenceDegrees": 1e9 } ] } }""", "incidence" },
        { "VISIT_UNREADABLE", """{ "machine": { "legs": [ { "name": "1", "nearPath": 80, "farPath": 480, "frame": { "arm": 0 } } ] } }""", "arm" },
        { "VISIT_UNREADABLE", """{ "machine": { "legs": [ { "name": "1", "nearPath": 80, "farPath": 480, "frame": { "thread": "M77" } } ] } }""", "M77" },
        { "VISIT_UNREADABLE", """{ "machine": { "legs": [ { "name": "1", "nearPath": 80, "farPath": 480, "frame": { "screws": [ { "name": "A", "at": "middle" } ] } } ] } }""", "'middle'" },
        { "VISIT_UNREADABLE", """{ "machine": { "washers": [ -1 ], "legs": [ { "name": "1", "nearPath": 80, "farPath": 480 } ] } }""", "washers" },
        { "VISIT_UNREADABLE", """{ "machine": { "washers": [ { "thickness": 1, "count": 1.5 } ], "legs": [ { "name": "1", "nearPath": 80, "farPath": 480 } ] } }""", "'count'" },
        { "VISIT_UNREADABLE", VisitTexts.Visit(VisitTexts.Machine, """{ "kind": "dance" }"""), "'dance'" },
        { "VISIT_UNREADABLE", VisitTexts.Visit(VisitTexts.Machine, "7"), "event 1" },
        { "VISIT_UNREADABLE", VisitTexts.Visit(VisitTexts.Machine, """{ "kind": "mark", "leg": "1", "path": 80, "u": 1, "v": 1 }"""), "'uncertainty'" },
        { "VISIT_UNREADABLE", VisitTexts.Visit(VisitTexts.Machine, """{ "kind": "mark", "leg": "1", "path": 80, "u": 1, "v": 1, "uncertainty": 0 }"""), "uncertainty" },
        { "VISIT_UNREADABLE", VisitTexts.Visit(VisitTexts.Machine, """{ "kind": "mark", "leg": "1", "path": 80, "u": 1, "v": 1, "covariance": [[1, 2], [2, 1]] }"""), "'covariance'" },
        { "VISIT_UNREADABLE", VisitTexts.Visit(VisitTexts.Machine, """{ "kind": "shim", "corner": "middle", "height": 1 }"""), "'corner'" },
        { "LEG_UNKNOWN", VisitTexts.Visit(VisitTexts.Machine, """{ "kind": "turn", "leg": "7", "screw": "A", "turns": 1 }"""), "leg 7" },
        { "SCREW_UNKNOWN", VisitTexts.Visit(VisitTexts.Machine, """{ "kind": "turn", "leg": "1", "screw": "Z", "turns": 1 }"""), "screw" },
        { "TURNS_INVALID", VisitTexts.Visit(VisitTexts.Machine, """{ "kind": "turn", "leg": "1", "screw": "A", "turns": 1000 }"""), "turns" },
        { "SURVEY_PLACE_OFF_BED", VisitTexts.Visit(VisitTexts.Machine, """{ "kind": "survey", "x": 900, "y": 0, "u": 0, "v": 0, "uncertainty": 0.05 }"""), "event 1" },
        { "VISIT_UNREADABLE", VisitTexts.Visit("""{ "aperture": { "diameter": -1 }, "bed": { "x": 500, "y": 400 }, "legs": [ { "name": "2", "nearPath": 60, "farPath": 560 } ] }"""), "'diameter'" },
        { "VISIT_UNREADABLE", VisitTexts.Visit("""{ "aperture": { "beamDiameter": "x" }, "bed": { "x": 500, "y": 400 }, "legs": [ { "name": "2", "nearPath": 60, "farPath": 560 } ] }"""), "'beamDiameter'" },
        { "VISIT_UNREADABLE", VisitTexts.Visit(VisitTexts.Machine, """{ "kind": "realign", "leg": "2" }"""), "'at'" },
        { "VISIT_LEGS_INVALID", """{ "machine": { "legs": [] } }""", "legs" },
        { "VISIT_BED_INVALID", """{ "machine": { "bed": { "x": 500, "y": 400 }, "legs": [ { "name": "1", "nearPath": 80, "farPath": 480 } ] } }""", "leg 2" },
    };

    [Theory]
    [MemberData(nameof(Hostile))]
    public void What_cannot_be_used_is_refused_with_its_place(string code, string text, string says)
    {
        Assert.False(VisitTexts.Advise(text).TryGet(out _, out Failure? failure));
        Assert.Equal(code, failure.Code.Name);
        Assert.Equal(FailureKind.BadInput, failure.Code.Kind);
        Assert.Contains(says, failure.Message, StringComparison.Ordinal);
        Assert.NotEmpty(failure.Hint);
    }

    private static Outcome<Visit> Read(string text) => VisitFile.Read(Encoding.UTF8.GetBytes(text));
}
