using System.Text;
using MarkReader.Alignment.Verdicts;
using MarkReader.Alignment.Visits;
using MarkReader.Application.Advising;
using MarkReader.Application.Practising;
using MarkReader.Application.Shims;
using MarkReader.Cards;
using MarkReader.Quantities;

namespace MarkReader.Application.Tests.Practising;

public sealed class PracticeSessionTests
{
    [Fact]
    public void A_visit_that_follows_the_advice_ends_within_and_its_file_gives_the_same_advice()
    {
        PracticeSession session = Begin(new(7, Twist: 1));
        PracticeEnd end = PlayPractice.Run(session).ValueOrThrow();

        Assert.IsType<VisitAction.Done>(end.Last.Action);
        Assert.Equal(Verdict.Within, end.Last.State.Machine.Verdict);
        Assert.InRange(session.TrueSpread()!.Value.Millimetres, 0, 0.5);
        Assert.True(session.TrueSpread(before: true)!.Value.Millimetres > 1);

        VisitAdvice read = AdviseVisit.Run(Encoding.UTF8.GetBytes(PracticeVisitFile.Write(session))).ValueOrThrow();
        Assert.Empty(read.Warnings);
        Assert.Equal((end.Last.Action, end.Last.Reason), (read.Action, read.Reason));
    }

    [Fact]
    public void The_same_number_gives_the_same_visit_and_another_number_another()
    {
        static string Played(int seed)
        {
            PracticeSession session = Begin(new(seed));
            PlayPractice.Run(session).ValueOrThrow();
            return PracticeVisitFile.Write(session);
        }

        Assert.Equal(Played(5), Played(5));
        Assert.NotEqual(Played(5), Played(6));
    }

    [Fact]
    public void A_step_can_be_taken_back()
    {
        PracticeSession session = Begin(new(3));
        Assert.False(session.Undo());
        string before = PracticeVisitFile.Write(session);
        session.Do(new VisitAction.Turn("1", "A", 0.25)).ValueOrThrow();
        double turned = session.TrueSpread()!.Value.Millimetres;
        Assert.NotEqual(session.TrueSpread(before: true)!.Value.Millimetres, turned);
        Assert.True(session.Undo());
        Assert.Equal(before, PracticeVisitFile.Write(session));
        Assert.Equal(session.TrueSpread(before: true), session.TrueSpread());
    }

    [Fact]
    public void What_the_machine_refuses_has_not_happened()
    {
        PracticeSession session = Begin(new(3));
        Assert.False(session.Do(new VisitAction.Turn("1", "Z", 0.25)).TryGet(out _, out Failure? failure));
        Assert.Equal("SCREW_UNKNOWN", failure.Code.Name);
        Assert.False(session.Do(new VisitAction.Fire("1", 4800, null)).TryGet(out _, out failure));
        Assert.Equal("STATION_OUTSIDE_TRAVEL", failure.Code.Name);
        Assert.False(session.Do(new VisitAction.Fire("9", 100, null)).TryGet(out _, out failure));
        Assert.Equal("LEG_UNKNOWN", failure.Code.Name);
        Assert.Empty(session.Steps);
    }

    [Theory]
    [InlineData(11, 0, 0, 0.05, 0.5)]
    [InlineData(8, -1, 0, 0.05, 0.5)]
    [InlineData(8, 0, 2, 0.05, 0.5)]
    [InlineData(8, 0, 0, double.NaN, 0.5)]
    [InlineData(8, 0, 0, 0.05, 0)]
    public void A_machine_beyond_practice_is_refused(double slope, double twist, double bend, double mark, double tolerance)
    {
        Assert.False(PracticeSession.Begin(new(1, slope, twist, bend, mark, tolerance), UsualStock.Washers, new StatedMarks()).TryGet(out _, out Failure? failure));
        Assert.Equal("PRACTICE_MACHINE_INVALID", failure.Code.Name);
    }

    [Fact]
    public void Photographed_marks_lie_where_the_machine_burnt_them()
    {
        Dictionary<string, byte[]> kept = [];
        PhotographedMarks photographed = new([CardKinds.Find("plate")!, CardKinds.Find("bed")!], (name, photo) =>
        {
            kept.Add(name, photo);
            return null;
        });
        PracticeRequest exact = new(12, Mark: 0.001);
        PracticeSession session = PracticeSession.Begin(exact, UsualStock.Washers, photographed).ValueOrThrow();
        PracticeSession stated = Begin(exact);
        foreach (VisitAction action in (VisitAction[])[new VisitAction.Fire("1", 80, null), new VisitAction.Survey(Length.Zero, Length.Zero)])
        {
            MeasuredMark seen = session.Do(action).ValueOrThrow().Mark!;
            CardPoint truth = stated.Do(action).ValueOrThrow().Mark!.Mark.Point;
            Assert.InRange(seen.Mark.Point.DistanceTo(truth), 0, 0.03);
            Assert.True(kept[seen.Photo!].AsSpan().StartsWith((ReadOnlySpan<byte>)[0xFF, 0xD8, 0xFF]), "A JPEG begins so.");
        }

        Assert.Equal(["pulse-01.jpg", "pulse-02.jpg"], kept.Keys);
    }

    private static PracticeSession Begin(PracticeRequest request) => PracticeSession.Begin(request, UsualStock.Washers, new StatedMarks()).ValueOrThrow();
}
