using System.Globalization;
using MarkReader.Alignment.Aiming;
using MarkReader.Alignment.Frames;
using MarkReader.Alignment.Verdicts;
using MarkReader.Application.Screws;
using MarkReader.Quantities;

namespace MarkReader.CommandLine.Output;

/// <summary>Screw turns for people.</summary>
internal static class ScrewsText
{
    private const string Fresh = "Then fire a fresh mark on clean tape and compare; what later steps of the job showed is no longer valid.";

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
        string pivot = frame.Pivot is { } at ? $"pivot {Corner(at)}, " : "";
        return $"frame: {pivot}{contacts}, facing the knobs; arm {Words.Fixed(frame.Arm, 2)} mm, pitch {Words.Fixed(frame.Pitch, 3)} mm, mirror at {Plain(frame.IncidenceDegrees)} degrees";
    }

    private static IEnumerable<string> Slope(ScrewsFinding finding)
    {
        yield return $"slope: {Components(finding.Slope)}";
        if (finding.Spread is not { } spread)
            yield break;
        string travel = Plain((finding.Leg!.Far.Path - finding.Leg.Near.Path).Millimetres);
        yield return $"spread over the travel of {travel} mm: {Words.Fixed(spread.Size.Millimetres, 2)} mm, tolerance {Words.Fixed(spread.Tolerance.Millimetres, 2)} mm: {spread.Verdict.Verdict.ToString().ToLowerInvariant()}";
        if (spread.Verdict.Verdict == Verdict.Within)
            yield return "The spread is within the tolerance: the turns can wait.";
    }

    private static IReadOnlyList<string> Responses(ScrewsFinding finding)
    {
        bool leg = finding.Leg is not null;
        Table table = new(["one turn clockwise", "u/mrad", "uncertainty", "v/mrad", "uncertainty", .. leg ? (string[])["far mark u/mm", "v/mm"] : []]);
        foreach (ScrewAdvice screw in finding.Screws)
        {
            string sign = screw.Response.SenseKnown ? "" : ", or the opposite";
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
        Table table = new("to take the slope away", "turns", "uncertainty", "by hand");
        foreach (ScrewAdvice screw in finding.Screws)
        {
            bool known = screw.Response.SenseKnown;
            table.Add(
                screw.Response.Screw,
                known ? Places(screw.Wanted.Turns) : Words.Fixed(Math.Abs(screw.Wanted.Turns), 3),
                Words.Fixed(screw.Wanted.Uncertainty, 3),
                known ? screw.Turn.Text : screw.Turn.Turns == 0 ? screw.Turn.Size : screw.Turn.Size + ", direction not known");
        }

        return
        [
            table.ToString(),
            .. finding.Screws.Where(s => s.First is not null).Select(First),
            $"uncertainty: standard uncertainty; clockwise facing the knob. When a screw's direction is reversed about {Plain(Math.Round(finding.Screws.Max(s => s.Response.Backlash.Degrees)))} degrees of the turn are lost: come from one side.",
        ];
    }

    private static string First(ScrewAdvice screw)
    {
        string begin = $"{screw.Response.Screw}: direction not known: try a small part first, and learn: {screw.First!.Turn.Text}, this screw alone, then a fresh far mark.";
        string size = screw.First.IsMoreThanWanted ? "It is more than the slope asks for, since less may be lost in the screw's play." : "The wrong way at most doubles this screw's part of the slope.";
        return screw.First.Tells
            ? $"{begin} {size}"
            : $"{begin} {size} It hardly shows above the uncertainty of the slope: repeat the marks before.";
    }

    private static IEnumerable<string> After(ScrewsFinding finding)
    {
        string presumed = finding.DirectionsKnown ? "" : ", each in the right direction";
        yield return $"expected after the turns by hand{presumed}: slope {Components(finding.After.Slope)}"
            + (finding.After.Spread is { } spread ? $"; spread over the travel {Words.Fixed(spread.Millimetres, 2)} mm" : "");
        if (finding.After is not { Near: { } near, Far: { } far })
        {
            yield return Fresh;
            yield break;
        }

        Table marks = new("expected mark", "u/mm", "v/mm", "region/mm");
        foreach ((string name, MeasuredPoint mark) in new[] { ("near", near), ("far", far) })
            marks.Add(name, Words.Place(mark.Point.U), Words.Place(mark.Point.V), Words.Region95(mark.Covariance));
        yield return marks.ToString();
        yield return Words.Region;
        yield return Fresh;
    }

    private static string Components(Slope slope) =>
        $"u {Signed(slope.U)}, v {Signed(slope.V)} mrad, standard uncertainty {Words.Fixed(Math.Sqrt(slope.Covariance.Uu), 2)} and {Words.Fixed(Math.Sqrt(slope.Covariance.Vv), 2)} mrad";

    private static string Corner(FrameCorner corner) => corner switch
    {
        FrameCorner.LowerLeft => "lower left",
        FrameCorner.LowerRight => "lower right",
        FrameCorner.UpperLeft => "upper left",
        _ => "upper right",
    };

    private static string Signed(double value) => value.ToString("+0.00;-0.00;0.00", CultureInfo.InvariantCulture);

    private static string Places(double turns) => turns.ToString("+0.000;-0.000;0.000", CultureInfo.InvariantCulture);

    private static string Plain(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);
}
