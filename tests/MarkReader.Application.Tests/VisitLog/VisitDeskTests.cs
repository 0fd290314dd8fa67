using System.Text;
using MarkReader.Alignment.Visits;
using MarkReader.Application.Advising;
using MarkReader.Application.Machines;
using MarkReader.Application.Reports;
using MarkReader.Application.Storage;
using MarkReader.Application.Tests.Advising;
using MarkReader.Application.Tests.Storage;
using MarkReader.Application.VisitLog;
using MarkReader.Quantities;

namespace MarkReader.Application.Tests.VisitLog;

public sealed class VisitDeskTests : IDisposable
{
    private const string Near = """{ "kind": "mark", "leg": "1", "path": 80, "u": 0.4, "v": 0.2, "uncertainty": 0.05 }""";
    private const string Far = """{ "kind": "mark", "leg": "1", "path": 480, "u": 2.4, "v": 1.4, "uncertainty": 0.05 }""";
    private const string Turn = """{"kind": "turn", "leg": "1", "screw": "A", "turns": 0.125, "note": "stiff"}""";

    private readonly TemporaryFolder _temporary = new();
    private readonly PhotoStore _photos;
    private readonly MachineStore _machines;
    private readonly VisitStore _visits;
    private readonly VisitDesk _desk;
    private readonly long _id;

    public VisitDeskTests()
    {
        Database database = _temporary.Open();
        _photos = TemporaryFolder.Photos(database);
        _machines = new(database, TimeProvider.System);
        _visits = new(database, TimeProvider.System);
        _desk = new(_visits, _photos, new(database, TimeProvider.System));
        long machine = _machines.Add(MachineFile.Read(Encoding.UTF8.GetBytes(VisitTexts.Machine)).ValueOrThrow()).ValueOrThrow().Entry.Id;
        _id = _visits.Begin(new(machine, "after the move")).ValueOrThrow().Entry.Id;
    }

    public void Dispose() => _temporary.Dispose();

    [Fact]
    public void Events_come_back_after_a_restart_in_their_order_and_as_they_were_sent()
    {
        foreach ((string text, string key) in new[] { (Near, "a"), (Far, "b"), (Turn, "c") })
            Add(text, key).ValueOrThrow();
        KeptVisit before = _visits.Find(_id).ValueOrThrow();
        KeptVisit after = new VisitStore(_temporary.Open(), TimeProvider.System).Find(_id).ValueOrThrow();
        Assert.Equal([Near, Far, Turn], after.Events.Select(e => e.Text));
        Assert.Equal(before.Entry, after.Entry);
        Assert.Equal(before.All, after.All);
        Assert.Equal((4, "after the move", VisitTexts.Machine), (after.Entry.Version, after.Entry.Note, after.Machine));
    }

    [Theory]
    [InlineData("""{ "kind": "mark", "leg": "1", "path": 480, "u": 400, "v": 0, "uncertainty": 0.05 }""", "entry 3 (mark on leg 1 at 480 mm) is a mark at (400, 0) mm")]
    [InlineData("""{ "kind": "mark", "leg": "2", "path": 0.5, "u": 4, "v": 0, "uncertainty": 0.05 }""", "entry 3 (mark on leg 2 at 0.5 mm) is a mark at the path length 0.5 mm")]
    [InlineData("""{ "kind": "turn", "leg": "1", "screw": "Z", "turns": 0.1 }""", "entry 3 (turn of screw Z on leg 1) turns a screw that its frame does not have")]
    [InlineData("""{ "kind": "shim" }""", "entry 3 (shims) has no 'corner'")]
    [InlineData("""{ "kind": "paint" }""", "entry 3 is of the kind 'paint'")]
    public void A_refusal_says_in_words_which_entry_is_meant(string text, string message)
    {
        Add(Near, "a").ValueOrThrow();
        Add(Far, "b").ValueOrThrow();
        Assert.False(Add(text, "c").TryGet(out _, out Failure? failure));
        Assert.Equal(message, failure.Message);
    }

    // The number that the visit's list shows, also when an entry before it was taken back.
    [Fact]
    public void A_warning_and_a_refusal_call_an_entry_by_the_same_number()
    {
        Add(Near, "a").ValueOrThrow();
        _desk.TakeBack(_id, ExpectedVersion.Any).ValueOrThrow();
        VisitAddition added = Add("""{ "kind": "mark", "leg": "1", "path": 80, "u": 0.4, "v": 0.2, "uncertainty": 0.05, "colour": "brown" }""", "b").ValueOrThrow();
        Assert.Equal(2, added.Event.Number);
        Assert.StartsWith("entry 2 (mark on leg 1 at 80 mm) has a field 'colour'", Assert.Single(added.Advice.Warnings, w => w.Code == "fieldIgnored").Message, StringComparison.Ordinal);
        Assert.StartsWith("entry 2 ", Assert.Single(VisitDesk.Advise(_visits.Find(_id).ValueOrThrow()).ValueOrThrow().Warnings, w => w.Code == "fieldIgnored").Message, StringComparison.Ordinal);

        Assert.False(Add("""{ "kind": "turn", "leg": "1", "screw": "A", "turns": 900 }""", "c").TryGet(out _, out Failure? failure));
        Assert.Equal("entry 3 (turn of screw A on leg 1) turns a screw by 900 turns; give turns of the knob between -20 and 20, clockwise positive", failure.Message + "; " + failure.Hint);
    }

    [Fact]
    public void The_list_without_visits_is_empty()
    {
        Assert.Single(_visits.List(null, 20).ValueOrThrow().Items);
        _visits.Remove(_id, ExpectedVersion.Any).ValueOrThrow();
        Assert.Empty(_visits.List(null, 20).ValueOrThrow().Items);
    }

    [Fact]
    public void A_step_s_advice_is_that_of_the_visit_file()
    {
        Assert.Equal(Advice(VisitTexts.Visit(VisitTexts.Machine, Near)), Report(Add(Near, "a").ValueOrThrow().Advice));
        Assert.Equal(Advice(VisitTexts.Visit(VisitTexts.Machine, Near, Far)), Report(Add(Far, "b").ValueOrThrow().Advice));
        Assert.Equal(Advice(_visits.Find(_id).ValueOrThrow().File()), Report(VisitDesk.Advise(_visits.Find(_id).ValueOrThrow()).ValueOrThrow()));
    }

    [Fact]
    public void A_repeated_request_is_answered_as_the_first_time_whatever_has_happened_since()
    {
        VisitAddition first = Add(Near, "a", ExpectedVersion.OneOf(1)).ValueOrThrow();
        VisitAddition again = Add(Near, "a", ExpectedVersion.OneOf(1)).ValueOrThrow();
        Assert.Equal(first.Event, again.Event);
        Assert.Equal(Report(first.Advice), Report(again.Advice));

        Add(Far, "b").ValueOrThrow();
        _desk.TakeBack(_id, ExpectedVersion.OneOf(3)).ValueOrThrow();
        _desk.TakeBack(_id, ExpectedVersion.OneOf(4)).ValueOrThrow();
        VisitAddition late = Add(Near, "a", ExpectedVersion.OneOf(1)).ValueOrThrow();

        Assert.Equal((first.Event.Number, first.Event.AddedVersion), (late.Event.Number, late.Event.AddedVersion));
        Assert.Equal(Report(first.Advice), Report(late.Advice));
        Assert.Empty(_visits.Find(_id).ValueOrThrow().Events);
    }

    [Fact]
    public void A_key_that_came_with_another_event_is_refused()
    {
        Add(Near, "a").ValueOrThrow();
        Assert.Equal(StorageFailures.KeyReused, Refused(Add(Far, "a")));
        Assert.Single(_visits.Find(_id).ValueOrThrow().All);
    }

    [Fact]
    public async Task One_event_sent_many_times_at_once_counts_once()
    {
        VisitAddition[] steps = await Task.WhenAll(Enumerable.Range(0, 8).Select(_ => Task.Run(() => Add(Near, "a").ValueOrThrow())));
        Assert.Single(steps.Select(s => s.Event.Number).Distinct());
        Assert.Single(_visits.Find(_id).ValueOrThrow().All);
    }

    [Fact]
    public async Task Different_events_sent_at_once_are_all_kept_or_one_of_them_when_each_was_meant_for_the_same_version()
    {
        VisitAddition[] steps = await Task.WhenAll(Enumerable.Range(0, 6).Select(i => Task.Run(() => Add(Near, FormattableString.Invariant($"free{i}")).ValueOrThrow())));
        Assert.Equal([1, 2, 3, 4, 5, 6], steps.Select(s => s.Event.Number).Order());
        bool[] kept = await Task.WhenAll(Enumerable.Range(0, 6).Select(i => Task.Run(
            () => Add(Far, FormattableString.Invariant($"bound{i}"), ExpectedVersion.OneOf(7)).TryGet(out _, out _))));
        Assert.Equal(1, kept.Count(k => k));
        Assert.Equal(7, _visits.Find(_id).ValueOrThrow().Events.Count());
    }

    [Fact]
    public void An_event_that_was_taken_back_stays_in_the_record_and_no_longer_counts()
    {
        Add(Near, "a").ValueOrThrow();
        Add(Far, "b").ValueOrThrow();
        KeptVisit visit = _desk.TakeBack(_id, ExpectedVersion.OneOf(3)).ValueOrThrow();
        Assert.Equal([Near], visit.Events.Select(e => e.Text));
        Assert.Equal([Near, Far], visit.All.Select(e => e.Text));
        Assert.Equal(4, visit.All[1].TakenBack!.Version);
        Assert.Equal([Near, Far], visit.EventsAt(3).Select(e => e.Text));

        // A repeated request for the same version takes nothing more back.
        Assert.Equal(StorageFailures.Changed, Refused(_desk.TakeBack(_id, ExpectedVersion.OneOf(3))));
        Assert.Equal(3, Add(Turn, "c").ValueOrThrow().Event.Number);
        Assert.Equal([Near, Turn], _visits.Find(_id).ValueOrThrow().Events.Select(e => e.Text));
        _desk.TakeBack(_id, ExpectedVersion.Any).ValueOrThrow();
        _desk.TakeBack(_id, ExpectedVersion.Any).ValueOrThrow();
        Assert.Equal(VisitLogFailures.NothingToTakeBack, Refused(_desk.TakeBack(_id, ExpectedVersion.Any)));
    }

    [Theory]
    [InlineData("EVENT_UNREADABLE", "")]
    [InlineData("EVENT_UNREADABLE", "[]")]
    [InlineData("EVENT_UNREADABLE", Near + "," + Far)]
    [InlineData("EVENT_UNREADABLE", Near + "]} // the rest")]
    [InlineData("EVENT_UNREADABLE", """{ "kind": "mark", "leg": "\ud800" }""")]
    [InlineData("EVENT_UNREADABLE", """{ "kind": [[[[[1]]]]] }""")]
    [InlineData("EVENT_UNREADABLE", """{ "kind": "mark", "leg": "1", "path": 80, "photo": "a", "mark": 0, "u": 1 }""")]
    [InlineData("EVENT_UNREADABLE", """{ "kind": "mark", "leg": "1", "path": 80, "mark": 0 }""")]
    [InlineData("NOT_KEPT", """{ "kind": "mark", "leg": "1", "path": 80, "photo": "a", "mark": 0 }""")]
    [InlineData("VISIT_UNREADABLE", """{ "kind": "dance" }""")]
    [InlineData("LEG_UNKNOWN", """{ "kind": "disturbed", "leg": "3" }""")]
    [InlineData("SCREW_UNKNOWN", """{ "kind": "turn", "leg": "1", "screw": "Z", "turns": 1 }""")]
    public void An_event_on_which_no_advice_can_be_given_is_refused_and_not_kept(string code, string text)
    {
        Assert.Equal(code, Refused(Add(text, "a")).Name);
        Assert.Equal(1, _visits.Find(_id).ValueOrThrow().Entry.Version);
        Add(Near, "a").ValueOrThrow();
    }

    [Theory]
    [InlineData("")]
    [InlineData("two words")]
    [InlineData("schlüssel")]
    public void A_key_that_cannot_be_one_is_refused(string key) => Assert.Equal(StorageFailures.KeyInvalid, Refused(Add(Near, key)));

    [Fact]
    public void A_photo_s_mark_is_kept_with_its_numbers_and_the_photo_is_not_deleted()
    {
        string photo = _photos.Keep(SomePhotos.Jpeg(1)).ValueOrThrow().Photo.Id;
        _photos.KeepMeasurement(photo, "1.0", new KeptAnswer.Report(
            """
            { "photo": { "width": 9, "height": 9 }, "card": { "kind": "plate" }, "warnings": [], "marks": [
              { "u": -1, "v": 0, "covariance": [[0.01, 0], [0, 0.01]] }, { "u": 0.123456789, "v": 0.2, "covariance": [[0.0025, 0.001], [0.001, 0.004]] } ] }
            """)).ValueOrThrow();
        // 0.05 mm of scatter from pulse to pulse is not seen in a photo: 0.0025 mm² on each axis.
        string text = $$"""{ "kind": "mark", "leg": "1", "path": 80.50, "photo": "{{photo}}", "mark": 1 }""";
        VisitAddition step = Add(text, "a").ValueOrThrow();
        Assert.Equal(step.Event, Add(text, "a").ValueOrThrow().Event);
        Assert.Equal($$"""{"kind":"mark","leg":"1","path":80.50,"photo":"{{photo}}","mark":1,"u":0.123456789,"v":0.2,"covariance":[[0.005000000000000001,0.001],[0.001,0.006500000000000001]]}""", step.Event.Text);
        Assert.Empty(step.Advice.Warnings);
        Assert.Equal(StorageFailures.PhotoInUse, Refused(_photos.Delete(photo)));
        Assert.Equal(VisitLogFailures.PhotoMarkUnknown, Refused(Add(text.Replace("\"mark\": 1", "\"mark\": 2", StringComparison.Ordinal), "b")));
        Assert.Equal(VisitLogFailures.PhotoMarkUnknown, Refused(Add(text.Replace("\"mark\": 1", "\"mark\": 0.5", StringComparison.Ordinal), "b")));
    }

    [Fact]
    public void A_visit_keeps_its_machine_when_that_is_changed_or_removed()
    {
        long machine = _visits.Find(_id).ValueOrThrow().Entry.MachineId!.Value;
        MachineDocument other = MachineFile.Read("""{ "name": "other", "legs": [ { "name": "1", "nearPath": 50, "farPath": 90 } ] }"""u8.ToArray()).ValueOrThrow();
        _machines.Replace(machine, other, ExpectedVersion.Any).ValueOrThrow();
        Assert.Equal(VisitTexts.Machine, _visits.Find(_id).ValueOrThrow().Machine);
        _machines.Remove(machine, ExpectedVersion.Any).ValueOrThrow();
        KeptVisit visit = _visits.Find(_id).ValueOrThrow();
        Assert.Null(visit.Entry.MachineId);
        Assert.Equal(VisitTexts.Machine, visit.Machine);
        Assert.Equal(StorageFailures.NotKept, Refused(_visits.Begin(new(machine, ""))));
    }

    private Outcome<VisitAddition> Add(string text, string key, ExpectedVersion? expected = null) => _desk.Append(_id, Encoding.UTF8.GetBytes(text), key, expected ?? ExpectedVersion.Any);

    private static FailureCode Refused<T>(Outcome<T> outcome)
        where T : class
    {
        Assert.False(outcome.TryGet(out _, out Failure? failure));
        Assert.NotEmpty(failure.Hint);
        return failure.Code;
    }

    private static string Advice(string file) => Report(AdviseVisit.Run(Encoding.UTF8.GetBytes(file)).ValueOrThrow());

    private static string Report(VisitAdvice advice) => ReportJson.Write(VisitReport.From(advice));
}
