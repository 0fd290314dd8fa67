using System.Text.Json;
using MarkReader.Alignment.Advice;
using MarkReader.Alignment.Frames;
using MarkReader.Alignment.Legs;
using MarkReader.Alignment.Screws;
using MarkReader.Alignment.Shims;
using MarkReader.Alignment.Survey;
using MarkReader.Alignment.Threads;
using MarkReader.Alignment.Visits;
using MarkReader.Application.Shims;
using MarkReader.Application.Texts;
using MarkReader.Quantities;

namespace MarkReader.Application.Advising;

/// <summary>Reads the machine of a visit file. What may be left out is taken as usual on small machines.</summary>
internal static class MachineJson
{
    private const double PathUncertainty = 1, Tolerance = 0.5, Arm = 30, Pitch = 0.7, CentreUncertainty = 0.05, UsualDiameter = 18, UsualBeam = 5;

    /// <returns>Null when something is wrong; <paramref name="fields"/> then says what.</returns>
    public static VisitSetup? Read(JsonFields fields, JsonElement element)
    {
        JsonObject machine = fields.Object(element, InputTexts.Get("machineJson.machine"), "legs", "bed", "aperture", "washers", "name", "pulseScatter", "remindDays");
        VisitLeg?[] legs = [.. machine.List("legs", required: true).Select((e, i) => Leg(fields, e, i + 1))];
        StockItem[] stock = [.. machine.List("washers").Select((e, i) => Washer(fields, e, i + 1))];
        VisitSetup setup = new([.. legs.OfType<VisitLeg>()])
        {
            Bed = machine.Find("bed") is { } bed ? Bed(fields, bed) : null,
            Aperture = machine.Find("aperture") is { } aperture ? Aperture(fields, aperture) : null,
            Stock = stock,
            PulseScatter = Length.FromMillimetres(PulseScatter(fields, machine)),
        };
        if (fields.Wrong is null && stock.Length > 0 && !StackSearch.Best(stock, Length.Zero, Length.FromMillimetres(0.1)).TryGet(out _, out Failure? wrong))
            fields.Refuse(InputTexts.Word("machineJson.washers", wrong.What), wrong.Remedy);
        return fields.Wrong is null ? setup : null;
    }

    private static double PulseScatter(JsonFields fields, JsonObject machine)
    {
        double scatter = machine.Millimetres("pulseScatter", VisitSetup.UsualPulseScatter.Millimetres);
        if (scatter is >= 0 and <= 5)
            return scatter;
        fields.Refuse(InputTexts.Word("machineJson.pulsescatterMachineNotBetweenAnd", new SaidLength(5)), InputTexts.Word("machineJson.giveStandardDeviationMarkFrom", Wording.Unit));
        return 0;
    }

    private static VisitLeg? Leg(JsonFields fields, JsonElement element, int number)
    {
        JsonObject leg = fields.Object(
            element, InputTexts.Word("machineJson.legList", number), "name", "nearPath", "farPath", "pathUncertainty", "incidenceDegrees", "pivotOffset", "pivotUncertainty", "tolerance", "targetRadius", "frame");
        string name = leg.Text("name");
        double near = leg.Millimetres("nearPath"), far = leg.Millimetres("farPath"), uncertainty = leg.Millimetres("pathUncertainty", PathUncertainty);
        double incidence = leg.Number("incidenceDegrees", 0), pivot = leg.Millimetres("pivotOffset", 0), pivotUncertainty = leg.Millimetres("pivotUncertainty", 0);
        double tolerance = leg.Millimetres("tolerance", Tolerance), radius = leg.Millimetres("targetRadius", 8);
        JsonElement frame = leg.Find("frame") ?? JsonDocument.Parse("{}").RootElement;
        if (FrameOf(fields, frame, name) is not { } read || fields.Wrong is not null)
            return null;
        if (Math.Abs(incidence) > 360)
            fields.Refuse(InputTexts.Word("machineJson.incidencedegreesLegNoAngleIncidence", JsonFields.Short(name)), InputTexts.Get("machineJson.giveAngleBetweenBeamAnd"));
        Station At(double path) => new(Length.FromMillimetres(path), Length.FromMillimetres(uncertainty));
        return new(name, new LegSetup(
            new Leg(Angle.FromDegrees(incidence), Length.FromMillimetres(pivot), Length.FromMillimetres(pivotUncertainty)), At(near), At(far), Length.FromMillimetres(tolerance), read.Frame)
        {
            Known = read.Known,
            Habits = read.Habits,
            TargetRadius = Length.FromMillimetres(radius),
        });
    }

    private static (MirrorFrame Frame, IReadOnlyList<KnownResponse> Known, ScrewHabits Habits)? FrameOf(JsonFields fields, JsonElement element, string leg)
    {
        JsonObject frame = fields.Object(
            element, InputTexts.Word("machineJson.frameLeg", JsonFields.Short(leg)), "pivot", "screws", "arm", "pitch", "thread", "incidenceDegrees", "fold", "faceDistance", "response", "backlashDegrees", "backlashUncertaintyDegrees", "armUncertainty");
        ScrewCorner[] screws = [.. frame.List("screws").Select((e, i) =>
        {
            JsonObject screw = fields.Object(e, InputTexts.Word("machineJson.screw", i + 1, frame.Where), "name", "at");
            return new ScrewCorner(screw.Text("name"), screw.Choice<FrameCorner>("at"));
        })];
        FrameCorner? pivot = frame.Has("pivot") ? frame.Choice<FrameCorner>("pivot") : screws.Length == 3 ? null : FrameCorner.LowerLeft;
        if (screws.Length == 0)
            screws = [new("A", FrameCorner.LowerRight), new("B", FrameCorner.UpperLeft)];
        KnownResponse[] known = [.. frame.List("response").Select((e, i) =>
        {
            JsonObject response = fields.Object(e, InputTexts.Word("machineJson.response", i + 1, frame.Where), "screw", "u", "v", "uncertainty", "senseProbability");
            return new KnownResponse(response.Text("screw"), response.Number("u"), response.Number("v"), response.Number("uncertainty"));
        })];
        double arm = frame.Millimetres("arm", Arm), pitch = PitchOf(fields, frame);
        double incidence = frame.Number("incidenceDegrees", 45), face = frame.Millimetres("faceDistance", 0);
        ScrewHabits usual = ScrewHabits.Usual;
        double backlash = frame.Number("backlashDegrees", usual.Backlash.Degrees), unsure = frame.Number("backlashUncertaintyDegrees", usual.BacklashUncertainty.Degrees);
        ScrewHabits habits = usual with { Backlash = Angle.FromDegrees(backlash), BacklashUncertainty = Angle.FromDegrees(unsure), Arm = frame.Number("armUncertainty", usual.Arm) };
        if (Math.Abs(face) > 100)
            fields.Refuse(InputTexts.Word("machineJson.facedistanceMoreThan", frame.Where, new SaidLength(100)), InputTexts.Word("machineJson.sayHowFarMirrorFace", Wording.Unit));
        FoldSide fold = frame.Choice("fold", (FoldSide?)FoldSide.Unknown);
        if (fields.Wrong is not null)
            return null;
        if (!MirrorFrame.AtCorners(pivot, screws, arm, pitch).TryGet(out MirrorFrame? built, out Failure? failure)
            || !built.WithIncidence(Angle.FromDegrees(incidence)).TryGet(out built, out failure))
        {
            fields.Refuse($"{frame.Where}: {failure.What}", failure.Remedy);
            return null;
        }

        return (built with { Fold = fold, FaceDistance = face }, known, habits);
    }

    private static double PitchOf(JsonFields fields, JsonObject frame)
    {
        if (!frame.Has("thread"))
            return frame.Millimetres("pitch", Pitch);
        string thread = frame.Text("thread");
        if (ScrewThreads.Parse(thread).TryGet(out ScrewThread? found, out Failure? failure))
            return found.Pitch.Millimetres;
        fields.Refuse($"{frame.Where}: {failure.What}", failure.Remedy);
        return Pitch;
    }

    private static VisitBed Bed(JsonFields fields, JsonElement element)
    {
        JsonObject bed = fields.Object(element, InputTexts.Get("machineJson.bed"), "x", "y", "tolerance");
        return new(
            new Bed(Length.FromMillimetres(bed.Millimetres("x")), Length.FromMillimetres(bed.Millimetres("y"))), Length.FromMillimetres(bed.Millimetres("tolerance", Tolerance)));
    }

    private static VisitAperture Aperture(JsonFields fields, JsonElement element)
    {
        JsonObject aperture = fields.Object(element, InputTexts.Get("machineJson.aperture"), "diameter", "beamDiameter", "tolerance", "u", "v", "uncertainty");
        double u = aperture.Millimetres("u", 0), v = aperture.Millimetres("v", 0), uncertainty = aperture.Millimetres("uncertainty", CentreUncertainty);
        double diameter = aperture.Millimetres("diameter", UsualDiameter), beam = aperture.Millimetres("beamDiameter", UsualBeam), tolerance = aperture.Millimetres("tolerance", Tolerance);
        if (!(diameter > 0 && beam > 0))
            fields.Refuse(InputTexts.Get("machineJson.apertureDiameterAndBeamdiameterNot"), InputTexts.Word("machineJson.giveBothAndForExample", new SaidLength(18), new SaidLength(5)));
        else if (tolerance > diameter / 2)
            fields.Refuse(InputTexts.Get("machineJson.apertureToleranceLetsBeamPass"), InputTexts.Word("machineJson.sayHowFarFromCentre", new SaidLength(0.5)));
        return new(new MeasuredPoint(new(u, v), Covariance2.Isotropic(uncertainty)), Length.FromMillimetres(tolerance)) { Diameter = Length.FromMillimetres(diameter), BeamDiameter = Length.FromMillimetres(beam) };
    }

    // A thickness, or a thickness with a count.
    private static StockItem Washer(JsonFields fields, JsonElement element, int number)
    {
        if (element.ValueKind == JsonValueKind.Number && element.TryGetDouble(out double plain) && Math.Abs(plain) < JsonObject.LargestLength)
            return UsualStock.Piece(plain);
        JsonObject washer = fields.Object(element, InputTexts.Word("machineJson.washer", number), "thickness", "count");
        double count = washer.Number("count", 1);
        if (count != Math.Floor(count) || !(count >= 1 && count <= 1e6))
            fields.Refuse(InputTexts.Word("machineJson.countWasherNotWholeNumber", number), InputTexts.Get("machineJson.sayHowManyThereOr"));
        return UsualStock.Piece(washer.Millimetres("thickness"), fields.Wrong is null ? (int)count : 1);
    }
}
