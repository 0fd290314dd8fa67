using MarkReader.Application.Storage;
using MarkReader.Application.Studies;
using MarkReader.Application.Tests.Storage;
using MarkReader.Quantities;

namespace MarkReader.Application.Tests.Studies;

/// <summary>Studies are begun once for each request, listed by pages, and no more are kept than may be.</summary>
public sealed class StudyStoreTests : IDisposable
{
    private static readonly StudySetup s_pulses = StudySetup.OfPulses("  press  ", Length.FromMillimetres(480), 12).ValueOrThrow();

    private readonly TemporaryFolder _temporary = new();
    private readonly StudyStore _studies;

    public StudyStoreTests() => _studies = new(_temporary.Open(), TimeProvider.System);

    public void Dispose() => _temporary.Dispose();

    [Fact]
    public void A_repeated_request_begins_one_study_and_its_key_goes_with_no_other()
    {
        RequestKey key = RequestKey.Of("k", [1]).ValueOrThrow();
        KeptStudy first = _studies.Begin(s_pulses, key).ValueOrThrow();
        Assert.Equal((first.Entry.Id, "press", 480.0), (_studies.Begin(s_pulses, key).ValueOrThrow().Entry.Id, first.Setup.Name, first.Setup.Path!.Value.Millimetres));
        Assert.False(_studies.Begin(s_pulses, RequestKey.Of("k", [2]).ValueOrThrow()).TryGet(out _, out Failure? failure));
        Assert.Equal(StorageFailures.KeyReused, failure.Code);
        Assert.NotEqual(first.Entry.Id, _studies.Begin(s_pulses).ValueOrThrow().Entry.Id);
    }

    [Fact]
    public void Studies_are_listed_by_pages_newest_first_up_to_as_many_as_may_be()
    {
        for (int i = 0; i < StudyStore.Most; i++)
            _studies.Begin(s_pulses with { Count = 3 + (i % 50) }).ValueOrThrow();
        Assert.False(_studies.Begin(s_pulses).TryGet(out _, out Failure? failure));
        Assert.Equal(StudyInputFailures.TooMany, failure.Code);
        List<long> ids = [];
        string? next = "";
        for (long? before = null; next is not null; before = next is null ? null : long.Parse(next, System.Globalization.CultureInfo.InvariantCulture))
        {
            Page<StudyEntry> page = _studies.List(before, 70).ValueOrThrow();
            ids.AddRange(page.Items.Select(s => s.Id));
            next = page.Next;
        }

        Assert.Equal(StudyStore.Most, ids.Count);
        Assert.Equal(ids.OrderDescending(), ids);
        Assert.False(_studies.List(null, 1).ValueOrThrow().Items[0].HasReadings);
    }

    [Theory]
    [InlineData("", 0.5, "a,b", 3, "STUDY_NAME_INVALID")]
    [InlineData("x\u0007", 0.5, "a,b", 3, "STUDY_NAME_INVALID")]
    [InlineData("x", 0, "a,b", 3, "STUDY_LENGTH_INVALID")]
    [InlineData("x", -1, "a,b", 3, "STUDY_LENGTH_INVALID")]
    [InlineData("x", 101, "a,b", 3, "STUDY_LENGTH_INVALID")]
    [InlineData("x", 0.5, "a", 3, "STUDY_PEOPLE_INVALID")]
    [InlineData("x", 0.5, "a,A", 3, "STUDY_PEOPLE_INVALID")]
    [InlineData("x", 0.5, "a,bbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbb", 3, "STUDY_PEOPLE_INVALID")]
    [InlineData("x", 0.5, "1,2,3,4,5,6,7,8,9,10,11,12,13", 3, "STUDY_PEOPLE_INVALID")]
    [InlineData("x", 0.5, "a,b", 1, "STUDY_COUNT_INVALID")]
    [InlineData("x", 0.5, "a,b", 21, "STUDY_COUNT_INVALID")]
    public void A_plan_that_no_study_can_have_is_refused(string name, double tolerance, string people, int each, string code)
    {
        Assert.False(StudySetup.OfMarks(name, Length.FromMillimetres(tolerance), people.Split(','), each).TryGet(out _, out Failure? failure));
        Assert.Equal(code, failure.Code.Name);
    }

    [Theory]
    [InlineData("", "STUDY_UNREADABLE")]
    [InlineData("[]", "STUDY_UNREADABLE")]
    [InlineData("""{ "kind": "else", "name": "x", "pulses": 3 }""", "STUDY_UNREADABLE")]
    [InlineData("""{ "kind": "marks", "name": "x", "people": [1, 2], "photosEach": 3 }""", "STUDY_UNREADABLE")]
    [InlineData("""{ "kind": "marks", "name": "x", "photosEach": 3 }""", "STUDY_UNREADABLE")]
    [InlineData("""{ "kind": "pulses", "name": "x", "pulses": 3.5 }""", "STUDY_COUNT_INVALID")]
    [InlineData("""{ "kind": "pulses", "name": "x", "path": -1, "pulses": 3 }""", "STUDY_LENGTH_INVALID")]
    [InlineData("""{ "kind": "pulses", "name": "x", "pulses": 3, "tapeHeight": 99 }""", "TAPE_HEIGHT_INVALID")]
    [InlineData("""{ "kind": "marks", "name": "x", "people": ["a", "b"], "photosEach": 3, "rulerU": 40 }""", "RULER_MISSING")]
    public void What_describes_no_study_is_refused(string json, string code)
    {
        Assert.False(StudySetupText.Read(System.Text.Encoding.UTF8.GetBytes(json)).TryGet(out _, out Failure? failure));
        Assert.Equal(code, failure.Code.Name);
    }
}
