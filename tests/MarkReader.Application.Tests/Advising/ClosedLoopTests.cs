using System.Globalization;
using System.Text.Json;
using MarkReader.Practice.Machines;
using MarkReader.Practice.Misalignment;
using MarkReader.Practice.Rails;
using MarkReader.Practice.Truth;
using MarkReader.Quantities;
using TubeEnd = MarkReader.Practice.Beams.TubeEnd;

namespace MarkReader.Application.Tests.Advising;

/// <summary>A program that knows nothing but the JSON of the contract brings machines into alignment.</summary>
public sealed class ClosedLoopTests
{
    private const double Tolerance = 0.5;

    [Theory]
    [InlineData(1, true)]
    [InlineData(2, true)]
    [InlineData(3, false)]
    [InlineData(4, false)]
    [InlineData(5, true)]
    public void The_json_alone_brings_a_machine_within_its_tolerances(int seed, bool bothEndsOfTube)
    {
        MisalignmentRanges ranges = MisalignmentRanges.WithTwist with { HandTurns = 0 };
        PracticeMachine machine = RandomMachines.Draw(StatedMachine.Desktop, ranges, new Random(seed));
        Random random = new(100 + seed);
        List<string> events = [];
        for (int i = 0; ; i++)
        {
            Assert.True(i < 150, "The visit does not end.");
            JsonElement action = VisitTexts.Answer(VisitTexts.Visit(VisitTexts.Machine, [.. events])).GetProperty("action");
            string kind = action.GetProperty("kind").GetString()!;
            Assert.NotEqual("stop", kind);
            if (kind == "done")
                break;
            (machine, string seen) = Do(machine, action, kind, bothEndsOfTube, random);
            events.Add(seen);
        }

        MarkSpread spread = machine.BedSpread(side: 2).ValueOrThrow();
        Assert.InRange(spread.Greatest.Millimetres, 0, Tolerance);
        // Of the marks' middle, whose place the corners share.
        Assert.InRange(spread.Middle.DistanceTo(CardPoint.Origin), 0, Tolerance + (spread.Greatest.Millimetres / 2));
    }

    private static (PracticeMachine Machine, string Event) Do(PracticeMachine machine, JsonElement action, string kind, bool bothEnds, Random random)
    {
        double Number(string name) => action.GetProperty(name).GetDouble();
        Length Mm(string name) => Length.FromMillimetres(Number(name));
        string Text(string name) => action.GetProperty(name).GetString()!;
        PracticeLeg Leg() => Text("leg") == "1" ? PracticeLeg.One : PracticeLeg.Two;
        string Mark(string fields, PracticeStation station)
        {
            CardPoint at = machine.Fire(station, random).ValueOrThrow().Place;
            return Say($"{{ {fields}, \"u\": {at.U}, \"v\": {at.V}, \"uncertainty\": 0.05 }}");
        }

        switch (kind)
        {
            case "fire":
                Length gantry = action.TryGetProperty("gantry", out JsonElement y) ? Length.FromMillimetres(y.GetDouble()) : Length.Zero;
                return (machine, Mark(Say($"\"kind\": \"mark\", \"leg\": \"{Text("leg")}\", \"path\": {Number("path")}"), machine.StationAt(Leg(), Mm("path"), gantry)));
            case "survey":
                return (machine, Mark(Say($"\"kind\": \"survey\", \"x\": {Number("x")}, \"y\": {Number("y")}"), PracticeStation.LegTwo(Mm("x"), Mm("y"))));
            case "turn":
                return (machine.Turn(Leg(), Text("screw"), Number("turns")).ValueOrThrow(), action.GetRawText());
            case "shim":
                return (machine.Shim(Enum.Parse<BedCorner>(Text("corner"), ignoreCase: true), Mm("height")).ValueOrThrow(), action.GetRawText());
            case "moveTarget":
                return (machine.MoveTarget(PracticeLeg.Two, new(Number("u"), Number("v"))).ValueOrThrow(), action.GetRawText());
            case "raiseTube":
                machine = machine.RaiseTube(TubeEnd.Front, Mm("height")).ValueOrThrow();
                return (bothEnds ? machine.RaiseTube(TubeEnd.Rear, Mm("height")).ValueOrThrow() : machine, action.GetRawText());
            case "realign":
                return (machine, action.GetRawText());
            default:
                throw new InvalidOperationException($"Unknown action {kind}.");
        }
    }

    private static string Say(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
