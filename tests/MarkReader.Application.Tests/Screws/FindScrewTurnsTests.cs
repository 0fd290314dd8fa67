using System.Text.Json;
using MarkReader.Alignment.Aiming;
using MarkReader.Alignment.Frames;
using MarkReader.Alignment.Screws;
using MarkReader.Alignment.Threads;
using MarkReader.Alignment.Verdicts;
using MarkReader.Application.Aiming;
using MarkReader.Application.Reports;
using MarkReader.Application.Screws;
using MarkReader.Quantities;

namespace MarkReader.Application.Tests.Screws;

public sealed class FindScrewTurnsTests
{
    private static readonly ScrewCorner[] s_twoScrews = [new("A", FrameCorner.LowerRight), new("B", FrameCorner.UpperLeft)];

    private static readonly KnownResponse[] s_learned = [new("A", -46, 0.8, 1.2), new("B", 0.3, 32, 1.5)];

    /// <summary>
    /// A tilt α = pitch/arm turns the beam by 2α in the plane of incidence of a 45° mirror and by 2·cos 45°·α = √2·α out of it: r = k − 2(k·n)n to first order.
    /// Pitches: ISO 262 (M4: 0.7 mm), ASME B1.1 (1/4-20: 25.4/20 = 1.27 mm).
    /// </summary>
    [Theory]
    [InlineData("M4", 0.7)]
    [InlineData("1/4-20", 1.27)]
    public void One_turn_at_a_45_degree_mirror_is_twice_the_tilt_in_the_plane_of_incidence_and_root_two_times_it_out_of_it(string thread, double pitch)
    {
        ScrewsFinding finding = Run(new SlopeInput.Stated(1, 1), Frame() with { Pitch = ScrewThreads.Parse(thread).ValueOrThrow().Pitch.Millimetres });
        double tilt = 1000 * pitch / 30;
        Assert.Equal(["A", "B"], finding.Screws.Select(s => s.Response.Screw));
        Assert.Equal(2 * tilt, Math.Abs(finding.Screws[0].Response.U), 1e-3);
        Assert.Equal(0, finding.Screws[0].Response.V, 1e-6);
        Assert.Equal(0, finding.Screws[1].Response.U, 1e-6);
        Assert.Equal(Math.Sqrt(2) * tilt, Math.Abs(finding.Screws[1].Response.V), 1e-3);
    }

    public static MatrixTheoryData<double, double, bool, bool> Slopes => new([-20, 0.3, 7], [-4, 0, 11], [false, true], [false, true]);

    [Theory]
    [MemberData(nameof(Slopes))]
    public void Turns_times_responses_take_the_slope_to_zero_with_and_without_a_pivot(double u, double v, bool pivot, bool learned)
    {
        ScrewsFinding finding = Run(new SlopeInput.Stated(u, v), (pivot ? Frame() : ThreeScrews()) with { Known = learned ? s_learned : [] });
        Slope left = SlopeTurns.After(finding.Slope, [.. finding.Screws.Select(s => (s.Response, s.Wanted.Turns))], 0);
        Assert.Equal(pivot ? 2 : 3, finding.Screws.Count);
        Assert.InRange(left.Magnitude, 0, 1e-6 * finding.Slope.Magnitude);
        Assert.Empty(finding.Warnings);
    }

    [Fact]
    public void Turns_by_hand_leave_no_more_than_their_rounding_and_the_spread_says_so()
    {
        ScrewsFinding finding = Run(new SlopeInput.Stated(2, -4), Frame() with { Known = s_learned }, new(80, 480));
        Assert.True(finding.DirectionsKnown);
        Assert.Equal(Verdict.Outside, finding.Spread!.Verdict.Verdict);
        // The rounding is at most a fifth of the tolerance or half of the turn's uncertainty, for each of two screws.
        double allowed = finding.Screws.Sum(s => Math.Max(0.1, 0.2 * s.Wanted.Uncertainty * 46));
        Assert.InRange(finding.After.Spread!.Value.Millimetres, 0, allowed);
        Assert.All(finding.Screws, s => Assert.Equal(Math.Round(128 * s.Turn.Turns), 128 * s.Turn.Turns, 1e-9));
        Assert.All(finding.Screws, s => Assert.Null(s.First));
    }

    /// <summary>Aim (0.2, 0.3) and slope (2.5, -5) mrad: after the exact turns every mark falls on the aim point.</summary>
    [Fact]
    public void Marks_give_their_slope_and_come_near_to_the_aim_point_by_the_turns()
    {
        CardPoint aim = new(0.2, 0.3), near = aim + (0.08 * new CardVector(2.5, -5)), far = aim + (0.48 * new CardVector(2.5, -5));
        ScrewsFinding finding = Run(new SlopeInput.FromMarks(near, far), Frame() with { Known = s_learned }, new(80, 480));
        Assert.Equal(2.5, finding.Slope.U, 1e-6);
        Assert.Equal(-5, finding.Slope.V, 1e-6);
        foreach ((MeasuredPoint mark, double path) in new[] { (finding.After.Near!, 0.08), (finding.After.Far!, 0.48) })
        {
            // The frame also shifts the beam at the mirror, by less than 0.1 mm here.
            CardPoint expected = aim + (path * new CardVector(finding.After.Slope.U, finding.After.Slope.V));
            Assert.InRange(mark.Point.DistanceTo(expected), 0, 0.1);
            Assert.InRange(mark.Covariance.MahalanobisSquared(mark.Point - expected), 0, Covariance2.ChiSquare95);
        }
    }

    /// <summary>A tape at 45° to the beam: offsets along u are 1/cos 45° longer on it.</summary>
    [Fact]
    public void On_a_tilted_target_the_move_along_u_is_longer()
    {
        CardVector Move(double incidence) => Run(new SlopeInput.Stated(1, 1), Frame(), new(80, 480, IncidenceDegrees: incidence)).Screws[0].FarMove!.Vector;
        Assert.Equal(0.48 * 2 * 700 / 30, Math.Abs(Move(0).U), 1e-3);
        Assert.Equal(Math.Sqrt(2), Move(45).U / Move(0).U, 1e-9);
    }

    [Fact]
    public void Without_a_known_response_the_size_is_given_and_a_first_turn_that_shows_more_than_its_uncertainty()
    {
        ScrewsFinding finding = Run(new SlopeInput.Stated(6, -8), Frame());
        Assert.False(finding.DirectionsKnown);
        Assert.Equal([0.0625, 0.0625], finding.Screws.Select(s => s.First!.Turn.Turns));
        Assert.All(finding.Screws, s => Assert.True(s.First!.Tells && !s.First.IsMoreThanWanted));
    }

    [Fact]
    public void A_first_turn_is_no_smaller_than_the_play_lets_through_and_keeps_the_mark_of_a_long_leg_on_its_target()
    {
        Assert.Equal(1.0 / 32, Run(new SlopeInput.Stated(1, 0), Frame()).Screws[0].First!.Turn.Turns);
        Assert.True(Run(new SlopeInput.Stated(1, 0), Frame()).Screws[0].First!.IsMoreThanWanted);
        // 46.7 mrad per turn: 1/16 turn would move the mark by 7.3 mm at 2.5 m, 1/32 by 3.6 mm.
        Assert.Equal(1.0 / 32, Run(new SlopeInput.Stated(9, 0), Frame(), new(100, 2500)).Screws[0].First!.Turn.Turns);
        Assert.False(Run(new SlopeInput.Stated(9, 0, 3), Frame(), new(100, 2500)).Screws[0].First!.Tells);
    }

    [Fact]
    public void A_slope_that_its_uncertainty_explains_asks_for_no_turn()
    {
        ScrewsFinding finding = Run(new SlopeInput.Stated(0.02, -0.03), Frame(), new(80, 480));
        Assert.Equal(["no turn", "no turn"], finding.Screws.Select(s => s.Turn.Text));
        Assert.All(finding.Screws, s => Assert.Null(s.First));
        Assert.Equal(Verdict.Within, finding.Spread!.Verdict.Verdict);
    }

    [Fact]
    public void Screws_that_act_alike_and_very_many_turns_earn_a_warning()
    {
        Assert.Contains(Run(new SlopeInput.Stated(1, 3), Frame() with { Known = [new("A", 40, 0, 1), new("B", 40, 0, 1)] }).Warnings, w => w.Code == "screwsAlike");
        Assert.Contains(Run(new SlopeInput.Stated(200, 3), Frame()).Warnings, w => w.Code == "manyTurns");
    }

    [Fact]
    public void Json_leaves_turns_open_where_the_direction_is_not_known()
    {
        JsonElement Screws(FrameInput frame)
        {
            using JsonDocument document = JsonDocument.Parse(ReportJson.Write(ScrewsReport.From(Run(new SlopeInput.Stated(2, -4), frame, new(80, 480)))));
            Assert.Equal(["frame", "slope", "spread", "screws", "after", "warnings"], document.RootElement.EnumerateObject().Select(p => p.Name));
            return document.RootElement.GetProperty("screws").Clone();
        }

        JsonElement open = Screws(Frame())[0], known = Screws(Frame() with { Known = s_learned })[0];
        Assert.Equal((false, JsonValueKind.Null, JsonValueKind.Object), (open.GetProperty("directionKnown").GetBoolean(), open.GetProperty("turns").ValueKind, open.GetProperty("firstTurn").ValueKind));
        Assert.Equal((true, JsonValueKind.Null), (known.GetProperty("directionKnown").GetBoolean(), known.GetProperty("firstTurn").ValueKind));
        Assert.InRange(known.GetProperty("turns").GetDouble(), 0.03, 0.06);
        Assert.EndsWith(" clockwise", known.GetProperty("hand").GetProperty("text").GetString(), StringComparison.Ordinal);
    }

    public static TheoryData<string, string> Wrong => new()
    {
        { "slope NaN", "SLOPE_INVALID" },
        { "slope 400", "SLOPE_INVALID" },
        { "uncertainty -1", "SLOPE_UNCERTAINTY_INVALID" },
        { "mark far", "SCREW_MARK_INVALID" },
        { "mark exact", "SCREW_MARK_UNCERTAINTY_INVALID" },
        { "marks alone", "SCREW_PATHS_MISSING" },
        { "paths swapped", "PATHS_SWAPPED" },
        { "tolerance 0", "SCREW_TOLERANCE_INVALID" },
        { "arm 0", "FRAME_ARM_INVALID" },
        { "pitch 0", "FRAME_PITCH_INVALID" },
        { "incidence NaN", "FRAME_INCIDENCE_INVALID" },
        { "incidence 80", "FRAME_INCIDENCE_INVALID" },
        { "same name", "FRAME_SCREW_NAME_INVALID" },
        { "at the pivot", "FRAME_CONTACTS_INVALID" },
        { "one screw", "FRAME_CONTACTS_INVALID" },
        { "unknown response", "SCREW_UNKNOWN" },
        { "vague response", "KNOWN_RESPONSE_INVALID" },
    };

    [Theory]
    [MemberData(nameof(Wrong))]
    public void What_cannot_be_is_refused_with_its_own_code(string what, string code)
    {
        SlopeInput.Stated slope = new(1, 1);
        ScrewsRequest request = what switch
        {
            "slope NaN" => new(slope with { U = double.NaN }, Frame()),
            "slope 400" => new(slope with { V = 400 }, Frame()),
            "uncertainty -1" => new(slope with { Uncertainty = -1 }, Frame()),
            "mark far" => new(new SlopeInput.FromMarks(new(0, 0), new(0, 1000)), Frame(), new(80, 480)),
            "mark exact" => new(new SlopeInput.FromMarks(new(0, 0), new(0, 1), 0), Frame(), new(80, 480)),
            "marks alone" => new(new SlopeInput.FromMarks(new(0, 0), new(0, 1)), Frame()),
            "paths swapped" => new(slope, Frame(), new(480, 80)),
            "tolerance 0" => new(slope, Frame(), new(80, 480), 0),
            "arm 0" => new(slope, Frame() with { Arm = 0 }),
            "pitch 0" => new(slope, Frame() with { Pitch = 0 }),
            "incidence NaN" => new(slope, Frame() with { IncidenceDegrees = double.NaN }),
            "incidence 80" => new(slope, Frame() with { IncidenceDegrees = 80 }),
            "same name" => new(slope, Frame() with { Screws = [s_twoScrews[0], s_twoScrews[1] with { Screw = "A" }] }),
            "at the pivot" => new(slope, Frame() with { Screws = [s_twoScrews[0], new("B", FrameCorner.LowerLeft)] }),
            "one screw" => new(slope, Frame() with { Screws = [s_twoScrews[0]] }),
            "unknown response" => new(slope, Frame() with { Known = [new("C", 40, 0, 1)] }),
            _ => new(slope, Frame() with { Known = [new("A", 40, 0, 30)] }),
        };
        Assert.False(FindScrewTurns.Run(request).TryGet(out _, out Failure? failure));
        Assert.Equal(code, failure.Code.Name);
    }

    private static FrameInput Frame() => new(FrameCorner.LowerLeft, s_twoScrews, 30, 0.7);

    private static FrameInput ThreeScrews() => new(null, [.. s_twoScrews, new("C", FrameCorner.UpperRight)], 30, 0.7);

    private static ScrewsFinding Run(SlopeInput slope, FrameInput frame, LegInput? leg = null) => FindScrewTurns.Run(new(slope, frame, leg)).ValueOrThrow();
}
