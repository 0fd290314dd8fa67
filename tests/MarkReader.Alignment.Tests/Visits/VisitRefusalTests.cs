using CsCheck;
using MarkReader.Alignment.Advice;
using MarkReader.Alignment.Legs;
using MarkReader.Alignment.Shims;
using MarkReader.Alignment.Survey;
using MarkReader.Alignment.Visits;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Tests.Visits;

public sealed class VisitRefusalTests
{
    public static TheoryData<string, FailureCode> Setups => new()
    {
        { "no leg", VisitFailures.LegsInvalid },
        { "a leg of another name", VisitFailures.LegsInvalid },
        { "a leg twice", VisitFailures.LegsInvalid },
        { "leg with its stations swapped", LegFailures.PathsSwapped },
        { "leg without tolerance", AdviceFailures.ToleranceInvalid },
        { "bed without leg 2", VisitFailures.BedInvalid },
        { "bed without tolerance", VisitFailures.BedInvalid },
        { "bed without travel", SurveyFailures.BedInvalid },
        { "aperture without bed", VisitFailures.ApertureInvalid },
        { "aperture without tolerance", VisitFailures.ApertureInvalid },
        { "aperture nowhere", VisitFailures.ApertureInvalid },
        { "aperture far away", VisitFailures.ApertureInvalid },
        { "washer without thickness", ShimFailures.ThicknessInvalid },
    };

    [Theory]
    [MemberData(nameof(Setups))]
    public void A_machine_that_cannot_be_is_refused_with_its_own_code(string what, FailureCode code)
    {
        VisitSetup legs = SomeVisit.Legs, bed = SomeVisit.Machine, aperture = SomeVisit.WithAperture;
        VisitLeg one = legs.Legs[0], two = legs.Legs[1];
        VisitSetup setup = what switch
        {
            "no leg" => new([]),
            "a leg of another name" => new([one, two with { Name = "two" }]),
            "a leg twice" => new([one, one]),
            "leg with its stations swapped" => new([one with { Setup = one.Setup with { Near = one.Setup.Far, Far = one.Setup.Near } }]),
            "leg without tolerance" => new([one with { Setup = one.Setup with { Tolerance = Length.Zero } }]),
            "bed without leg 2" => bed with { Legs = [one] },
            "bed without tolerance" => bed with { Bed = bed.Bed! with { Tolerance = Length.Zero } },
            "bed without travel" => bed with { Bed = bed.Bed! with { Travels = new(Length.Zero, Some.Mm(400)) } },
            "aperture without bed" => aperture with { Bed = null },
            "aperture without tolerance" => aperture with { Aperture = aperture.Aperture! with { Tolerance = Length.Zero } },
            "aperture nowhere" => aperture with { Aperture = aperture.Aperture! with { Centre = Some.Point(double.NaN, 0) } },
            "aperture far away" => aperture with { Aperture = aperture.Aperture! with { Centre = Some.Point(0, 60) } },
            _ => bed with { Stock = [new("foil", Length.Zero, Length.Zero)] },
        };
        Assert.Equal(code, Refusal(setup).Code);
    }

    public static TheoryData<string, FailureCode> Events => new()
    {
        { "mark of an unknown leg", VisitFailures.LegUnknown },
        { "turn on an unknown leg", VisitFailures.LegUnknown },
        { "realignment of an unknown leg", VisitFailures.LegUnknown },
        { "disturbance of an unknown leg", VisitFailures.LegUnknown },
        { "mark at no place", VisitFailures.EventInvalid },
        { "mark far away", VisitFailures.EventInvalid },
        { "mark at no path", AdviceFailures.MarkInvalid },
        { "mark without uncertainty", AdviceFailures.MarkUncertaintyInvalid },
        { "turn of no number", AdviceFailures.TurnsInvalid },
        { "turn of an unknown screw", AdviceFailures.ScrewUnknown },
        { "survey off the bed", SurveyFailures.PlaceOffBed },
        { "survey mark at no place", SurveyFailures.MarkInvalid },
        { "survey mark off the opening", SurveyFailures.MarkInvalid },
        { "survey mark without uncertainty", SurveyFailures.MarkInvalid },
        { "survey mark with an endless uncertainty", SurveyFailures.MarkInvalid },
        { "shim too high", VisitFailures.EventInvalid },
        { "move nowhere", VisitFailures.EventInvalid },
        { "move too far", VisitFailures.EventInvalid },
        { "tube raised too far", VisitFailures.EventInvalid },
        { "2001 events", VisitFailures.TooManyEvents },
        { "1001 events of one leg", AdviceFailures.TooManyEvents },
        { "201 survey marks", SurveyFailures.TooManyMarks },
    };

    [Theory]
    [MemberData(nameof(Events))]
    public void An_event_that_cannot_be_is_refused_with_its_own_code(string what, FailureCode code)
    {
        VisitEvent moved = new VisitEvent.MoveTarget(new(0.1, 0));
        VisitEvent[] events = what switch
        {
            "mark of an unknown leg" => [SomeVisit.Mark("3", 80)],
            "turn on an unknown leg" => [SomeVisit.Turn("", "A", 0.1)],
            "realignment of an unknown leg" => [new VisitEvent.Realign("3", GantryEnd.Far)],
            "disturbance of an unknown leg" => [new VisitEvent.Disturbed("3")],
            "mark at no place" => [SomeVisit.Mark("1", 80, double.NaN)],
            "mark far away" => [SomeVisit.Mark("1", 80, 0, -301)],
            "mark at no path" => [SomeVisit.Mark("1", double.NaN)],
            "mark without uncertainty" => [SomeVisit.Mark("1", 80, 0, 0, 0)],
            "turn of no number" => [SomeVisit.Turn("1", "A", double.NaN)],
            "turn of an unknown screw" => [SomeVisit.Turn("1", "Q", 0.1)],
            "survey off the bed" => [Seen(600, 0)],
            "survey mark at no place" => [Seen(0, 0, double.NaN)],
            "survey mark off the opening" => [Seen(0, 0, 51)],
            "survey mark without uncertainty" => [Seen(0, 0, 0, 0)],
            "survey mark with an endless uncertainty" => [.. SomeVisit.Survey(), Seen(0, 0, 0, 1e100)],
            "shim too high" => [new VisitEvent.Shim(BedCorner.FarRight, Some.Mm(21))],
            "move nowhere" => [new VisitEvent.MoveTarget(new(double.NaN, 0))],
            "move too far" => [new VisitEvent.MoveTarget(new(0, 51))],
            "tube raised too far" => [new VisitEvent.RaiseTube(Some.Mm(101))],
            "2001 events" => [.. Enumerable.Repeat(moved, 2001)],
            "1001 events of one leg" => [.. Enumerable.Repeat(SomeVisit.Mark("1", 80), 1001)],
            _ => [.. Enumerable.Repeat(SomeVisit.At(BedCorner.FarRight), 201)],
        };
        Assert.Equal(code, Refusal(SomeVisit.WithAperture, events).Code);
    }

    [Fact]
    public void A_refusal_says_which_event_it_is_about() =>
        Assert.StartsWith("event 5 ", Refusal(SomeVisit.Machine, [.. SomeVisit.Aligned, new VisitEvent.Shim(BedCorner.FarRight, Some.Mm(21))]).Message, StringComparison.Ordinal);

    [Theory]
    [InlineData("survey")]
    [InlineData("shim")]
    public void What_belongs_to_a_survey_needs_a_bed(string what) =>
        Assert.Equal(VisitFailures.EventInvalid, Refusal(SomeVisit.Legs, what == "survey" ? SomeVisit.At(BedCorner.NearLeft) : new VisitEvent.Shim(BedCorner.FarRight, Some.Mm(1))).Code);

    [Fact]
    public void Any_events_within_the_limits_give_an_advice_or_a_refusal()
    {
        Gen<VisitEvent> any = Gen.OneOf(
            Gen.Select(Gen.Bool, Gen.Double[40, 600], Gen.Double[-40, 40], Gen.Double[-40, 40], Gen.Double[0.01, 5], (one, p, u, v, s) => SomeVisit.Mark(one ? "1" : "2", p, u, v, s)),
            Gen.Select(Gen.Bool, Gen.Bool, Gen.Double[-2, 2], (one, a, t) => SomeVisit.Turn(one ? "1" : "2", a ? "A" : "B", t)),
            Gen.Select(Gen.Double[0, 500], Gen.Double[0, 400], Gen.Double[-20, 20], Gen.Double[0.01, 5], Seen),
            Gen.Select(Gen.Enum<BedCorner>(), Gen.Double[-20, 20], (c, h) => (VisitEvent)new VisitEvent.Shim(c, Some.Mm(h))),
            Gen.Select(Gen.Double[-30, 30], Gen.Double[-30, 30], (u, v) => (VisitEvent)new VisitEvent.MoveTarget(new(u, v))),
            Gen.Double[-100, 100].Select(h => (VisitEvent)new VisitEvent.RaiseTube(Some.Mm(h))),
            Gen.Select(Gen.Bool, Gen.Enum<GantryEnd>(), (one, at) => (VisitEvent)new VisitEvent.Realign(one ? "1" : "2", at)),
            Gen.Bool.Select(one => (VisitEvent)new VisitEvent.Disturbed(one ? "1" : "2")));
        Gen.Select(any.Array[0, 20], Gen.Bool).Sample(
            (events, aligned) => VisitAdviser.Advise(SomeVisit.WithAperture with { Stock = SomeVisit.Washers }, aligned ? [.. SomeVisit.Surveyed, .. events] : events).TryGet(out VisitAdvice? advice, out _)
                is false || (double.IsFinite(advice!.State.Machine.Probability) && (advice.Action is VisitAction.Done || advice.Reason.Length > 10)),
            iter: 200);
    }

    private static Failure Refusal(VisitSetup setup, params VisitEvent[] events)
    {
        Assert.False(VisitAdviser.Advise(setup, events).TryGet(out _, out Failure? failure));
        Assert.NotEmpty(failure.Hint);
        return failure;
    }

    private static VisitEvent Seen(double x, double y, double u = 0, double sigma = SomeVisit.Sigma) => new VisitEvent.Survey(new(Some.Mm(x), Some.Mm(y), Some.Point(u, 0, sigma)));
}
