using System.Text.RegularExpressions;
using MarkReader.Alignment.Verdicts;
using MarkReader.Alignment.Visits;
using MarkReader.Application.Advising;
using MarkReader.Application.Pictures;
using MarkReader.Application.Practising;
using MarkReader.Application.Shims;
using MarkReader.Application.Tests.Advising;
using MarkReader.Drawing.Pictures;
using MarkReader.Quantities;

namespace MarkReader.Application.Tests.Pictures;

public sealed partial class VisitPicturesTests
{
    [Fact]
    public void A_practice_visit_has_the_pictures_of_its_action_at_every_step_and_of_what_was_found_at_its_end()
    {
        PracticeSession session = PracticeSession.Begin(new(6, Twist: 1.5), UsualStock.Washers, new StatedMarks()).ValueOrThrow();
        HashSet<string> seen = [];
        PracticeEnd end = PlayPractice.Run(session, advice => seen.UnionWith(Check(session, advice))).ValueOrThrow();

        Assert.IsType<VisitAction.Done>(end.Last.Action);
        Assert.Superset(new HashSet<string> { "target-1", "target-2", "screw", "bed", "frame", "aperture", "budget-1", "budget-2" }, seen);
        Assert.Contains("aperture", Check(session, end.Last));
        VisitPicture[] before = [.. VisitPictures.Before(session.Setup, session.Events)];
        Assert.Superset(new HashSet<string> { "before-target-1", "before-target-2", "before-bed", "before-aperture" }, before.Select(p => p.Name).ToHashSet());
        // As found: the two marks before the first turn, none of them stale, and no arrow.
        TargetPlan found = Assert.IsType<TargetPlan>(before[0].Drawing);
        Assert.True(found.Marks.Count == 2 && found.Marks.All(m => m.Counts) && found.Moving is null);
    }

    [Fact]
    public void The_target_tells_the_last_far_mark_s_distance_from_the_aim_point_and_the_first_one_s()
    {
        string[] events =
        [
            Mark(80, 0.4, 0.2), Mark(480, 2.4, 1.4), """{ "kind": "turn", "leg": "1", "screw": "A", "turns": 0.125 }""", Mark(480, 1.2, 1.4),
        ];
        (Visit visit, VisitAdvice advice) = Read(events);
        VisitPicture target = VisitPictures.Of(visit.Setup, visit.Events, advice).Single(p => p.Name == "target-1");
        TargetPlan plan = Assert.IsType<TargetPlan>(target.Drawing);
        CardPoint aim = advice.State.Legs["1"].State.Aim!.Point;
        Assert.Equal(aim.DistanceTo(new(1.2, 1.4)), plan.ToGo!.Value.Millimetres, 1e-9);
        Assert.Equal(aim.DistanceTo(new(2.4, 1.4)), plan.AtFirst!.Value.Millimetres, 1e-9);
        Assert.Equal([(MarkRole.Near, false), (MarkRole.Far, false), (MarkRole.Far, true)], plan.Marks.Select(m => (m.Role, m.Counts)));
        Assert.Contains("Mark 3, far: u 1.20 mm, v 1.40 mm.", target.Description, StringComparison.Ordinal);
        Assert.Contains("Mark 1, near, before a change: u 0.40 mm, v 0.20 mm.", target.Description, StringComparison.Ordinal);
    }

    /// <summary>With an exact offset: a 9, w 3.5, d 4 pass 0.996669900 of the power, the published value of the clipping's own tests.</summary>
    [Fact]
    public void What_the_entry_hole_keeps_back_is_the_published_part()
    {
        string machine = VisitTexts.Machine.Replace("\"beamDiameter\": 5", "\"beamDiameter\": 7", StringComparison.Ordinal);
        Visit visit = VisitFile.Read(System.Text.Encoding.UTF8.GetBytes(VisitTexts.Visit(machine))).ValueOrThrow();
        VisitAdvice advice = VisitAdviser.Advise(visit.Setup, visit.Events).ValueOrThrow();
        CentringState off = new(new(Verdict.Outside, 0, 0), new(new(4, 0), new(0, 0, 0)));
        VisitPicture picture = VisitPictures.Of(visit.Setup, [], advice with { State = advice.State with { Centring = off } }).Single(p => p.Name == "aperture");
        ApertureView view = Assert.IsType<ApertureView>(picture.Drawing);
        Assert.Equal(1 - 0.996669900, view.Clipped!.Value, 1e-9);
        Assert.Equal((18, 7), (view.Diameter.Millimetres, view.BeamDiameter.Millimetres));
        Assert.Contains("0.33 % of the power of a beam of 7 mm", picture.Description, StringComparison.Ordinal);
    }

    [Fact]
    public void The_budget_s_parts_make_the_whole_and_stay_when_a_turn_follows()
    {
        string[] marks = [Mark(80, 0.4, 0.2), Mark(480, 2.4, 1.4)];
        UncertaintyBars bars = Budget(marks);
        Assert.Equal(1, bars.Bars.Sum(b => b.Share), 1e-9);
        Assert.Equal(bars.Whole.Millimetres, Math.Sqrt(bars.Bars.Sum(b => Math.Pow(b.Uncertainty.Millimetres, 2))), 1e-9);
        Assert.Equal(["Marks", "Path lengths"], bars.Bars.Select(b => b.Name));
        Assert.Equal(bars.Whole, Budget([.. marks, """{ "kind": "turn", "leg": "1", "screw": "A", "turns": 0.125 }"""]).Whole);
    }

    [Fact]
    public void A_visit_without_a_mark_has_no_pictures()
    {
        (Visit visit, VisitAdvice advice) = Read();
        Assert.Empty(VisitPictures.Of(visit.Setup, visit.Events, advice));
        Assert.Empty(VisitPictures.Before(visit.Setup, visit.Events));
    }

    private static string[] Check(PracticeSession session, VisitAdvice advice)
    {
        IReadOnlyList<VisitPicture> pictures = VisitPictures.Of(session.Setup, session.Events, advice);
        string[] names = [.. pictures.Select(p => p.Name)];
        Assert.Equal(names.Distinct(), names);
        Assert.All(pictures, p => Assert.True(Name().IsMatch(p.Name) && p.Description.Length > 20, $"{p.Name}: {p.Description}"));
        Assert.Equal(advice.Action is VisitAction.Turn, names.Contains("screw"));
        Assert.True(advice.Action is not VisitAction.Survey || names.Contains("bed"));
        if (advice.Action is VisitAction.Shim shim)
            Assert.Equal(shim.Height, Assert.IsType<TwistedFrame>(pictures.Single(p => p.Name == "frame").Drawing).Corners.Single(c => c.Shim is not null).Shim);
        return names;
    }

    private static UncertaintyBars Budget(string[] events)
    {
        (Visit visit, VisitAdvice advice) = Read(events);
        return Assert.IsType<UncertaintyBars>(VisitPictures.Of(visit.Setup, visit.Events, advice).Single(p => p.Name == "budget-1").Drawing);
    }

    private static (Visit Visit, VisitAdvice Advice) Read(params string[] events)
    {
        Visit visit = VisitFile.Read(System.Text.Encoding.UTF8.GetBytes(VisitTexts.Visit(VisitTexts.Machine, events))).ValueOrThrow();
        return (visit, VisitAdviser.Advise(visit.Setup, visit.Events).ValueOrThrow());
    }

    private static string Mark(double path, double u, double v) =>
        FormattableString.Invariant($$"""{ "kind": "mark", "leg": "1", "path": {{path}}, "u": {{u}}, "v": {{v}}, "uncertainty": 0.05 }""");

    [GeneratedRegex("^[a-z0-9-]+$", RegexOptions.CultureInvariant)]
    private static partial Regex Name();
}
