using System.Globalization;
using MarkReader.Alignment.Aiming;
using MarkReader.Alignment.Frames;
using MarkReader.Alignment.Verdicts;
using MarkReader.Application.Screws;
using MarkReader.Quantities;
using static MarkReader.Quantities.Texts<MarkReader.CommandLine.Output.OutputTexts>;

namespace MarkReader.CommandLine.Output;

/// <summary>Screw turns for people.</summary>
internal static class ScrewsText
{
    private static string Fresh => Get("screws.thenFireAFresh");

    public static string Of(ScrewsFinding finding)
    {
        IReadOnlyList<string>[] parts =
        [
            [Frame(finding.Frame), .. Slope(finding)],
            Responses(finding),
            Turns(finding),
            [.. After(finding), .. Words.Of(finding.Warnings)],
            [Words.Cautions],
        ];
        return string.Join(Environment.NewLine + Environment.NewLine, parts.Select(p => string.Join(Environment.NewLine, p)));
    }

    private static string Frame(FrameInput frame)
    {
        string contacts = string.Join(", ", frame.Screws.Select(s => $"{s.Screw} {Corner(s.At)}"));
        string pivot = frame.Pivot is { } at ? Say("screws.pivot", Corner(at)) : "";
        return Say("screws.frameFacingTheKnobs", pivot, contacts, Words.Fixed(frame.Arm, 2), Words.Fixed(frame.Pitch, 3), Plain(frame.IncidenceDegrees));
    }

    private static IEnumerable<string> Slope(ScrewsFinding finding)
    {
        yield return Say("screws.slope", Components(finding.Slope));
        if (finding.Spread is not { } spread)
            yield break;
        string travel = Plain((finding.Leg!.Far.Path - finding.Leg.Near.Path).Millimetres);
        yield return Say("screws.spreadOverTheTravel", travel, Words.Fixed(spread.Size.Millimetres, 2), Words.Fixed(spread.Tolerance.Millimetres, 2), Words.Of(spread.Verdict));
        if (spread.Verdict.Verdict == Verdict.Within)
            yield return Get("screws.theSpreadIsWithin");
    }

    private static IReadOnlyList<string> Responses(ScrewsFinding finding)
    {
        bool leg = finding.Leg is not null;
        Table table = new([Get("screws.oneTurnClockwise"), Get("screws.uMrad"), Get("screws.uncertainty"), Get("screws.vMrad"), Get("screws.uncertainty"), .. leg ? (string[])[Get("screws.farMarkUMm"), "v/mm"] : []]);
        foreach (ScrewAdvice screw in finding.Screws)
        {
            string sign = screw.Response.SenseKnown ? "" : Get("screws.orTheOpposite");
            table.Add(
            [
                screw.Response.Screw + sign,
                Signed(screw.Response.U),
                Words.Fixed(Math.Sqrt(screw.Response.Covariance.Uu), 2),
                Signed(screw.Response.V),
                Words.Fixed(Math.Sqrt(screw.Response.Covariance.Vv), 2),
                .. screw.FarMove is { } move ? (string[])[Signed(move.Vector.U), Signed(move.Vector.V)] : [],
            ]);
        }

        return [table.ToString()];
    }

    private static IReadOnlyList<string> Turns(ScrewsFinding finding)
    {
        Table table = new(Get("screws.toTakeTheSlope"), Get("screws.turns"), Get("screws.uncertainty"), Get("screws.byHand"));
        foreach (ScrewAdvice screw in finding.Screws)
        {
            bool known = screw.Response.SenseKnown;
            table.Add(
                screw.Response.Screw,
                known ? Places(screw.Wanted.Turns) : Words.Fixed(Math.Abs(screw.Wanted.Turns), 3),
                Words.Fixed(screw.Wanted.Uncertainty, 3),
                known ? screw.Turn.Advice : screw.Turn.Turns == 0 ? screw.Turn.Size : screw.Turn.Size + Get("screws.directionNotKnown"));
        }

        return
        [
            table.ToString(),
            .. finding.Screws.Where(s => s.First is not null).Select(First),
            Say("screws.uncertaintyStandardUncertaintyClockwise", Plain(Math.Round(finding.Screws.Max(s => s.Response.Backlash.Degrees)))),
        ];
    }

    private static string First(ScrewAdvice screw)
    {
        string begin = Say("screws.directionNotKnownTry", screw.Response.Screw, screw.First!.Turn.Advice);
        string size = screw.First.IsMoreThanWanted ? Get("screws.itIsMoreThan") : Get("screws.theWrongWayAt");
        return screw.First.Tells
            ? $"{begin} {size}"
            : Say("screws.itHardlyShowsAbove", begin, size);
    }

    private static IEnumerable<string> After(ScrewsFinding finding)
    {
        string presumed = finding.DirectionsKnown ? "" : Get("screws.eachInTheRight");
        yield return Say("screws.expectedAfterTheTurns", presumed, Components(finding.After.Slope))
            + (finding.After.Spread is { } spread ? Say("screws.spreadOverTheTravel2", Words.Fixed(spread.Millimetres, 2)) : "");
        if (finding.After is not { Near: { } near, Far: { } far })
        {
            yield return Fresh;
            yield break;
        }

        Table marks = new(Get("screws.expectedMark"), "u/mm", "v/mm", Get("screws.regionMm"));
        foreach ((string name, MeasuredPoint mark) in new[] { (Get("screws.near"), near), (Get("screws.far"), far) })
            marks.Add(name, Words.Place(mark.Point.U), Words.Place(mark.Point.V), Words.Region95(mark.Covariance));
        yield return marks.ToString();
        yield return Words.Region;
        yield return Fresh;
    }

    private static string Components(Slope slope) =>
        Say("screws.uVMradStandard", Signed(slope.U), Signed(slope.V), Words.Fixed(Math.Sqrt(slope.Covariance.Uu), 2), Words.Fixed(Math.Sqrt(slope.Covariance.Vv), 2));

    private static string Corner(FrameCorner corner) => corner switch
    {
        FrameCorner.LowerLeft => Get("screws.lowerLeft"),
        FrameCorner.LowerRight => Get("screws.lowerRight"),
        FrameCorner.UpperLeft => Get("screws.upperLeft"),
        _ => Get("screws.upperRight"),
    };

    private static string Signed(double value) => value.ToString("+0.00;-0.00;0.00", CultureInfo.InvariantCulture);

    private static string Places(double turns) => turns.ToString("+0.000;-0.000;0.000", CultureInfo.InvariantCulture);

    private static string Plain(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);
}
