using System.Text;
using MarkReader.Application.Cameras;
using MarkReader.Application.Machines;
using MarkReader.Application.Storage;
using MarkReader.Application.Studies;
using MarkReader.Application.Tests.Storage;
using MarkReader.Metrology.Studies;
using MarkReader.Quantities;

namespace MarkReader.Application.Tests.Studies;

/// <summary>Studies whose photos come one by one, or whose readings come as a table.</summary>
public sealed class StudyDeskTests : IDisposable
{
    private static readonly StudySetup s_marks = StudySetup.OfMarks("tape", Length.FromMillimetres(0.5), ["anna", " berta ", ""], 2).ValueOrThrow();

    private readonly TemporaryFolder _temporary = new();
    private readonly StudyStore _studies;
    private readonly MachineStore _machines;
    private readonly StudyDesk _desk;

    public StudyDeskTests()
    {
        Database database = _temporary.Open();
        _studies = new(database, TimeProvider.System);
        _machines = new(database, TimeProvider.System);
        _desk = new(_studies, new CameraStore(database, TimeProvider.System));
    }

    public void Dispose() => _temporary.Dispose();

    [Fact]
    public void Photos_that_come_one_by_one_give_the_study_that_their_folder_gives_at_once()
    {
        byte[][] photos = [.. Enumerable.Range(1, 4).Select(StudyPhotos.Target)];
        string folder = Path.Combine(_temporary.Folder.Root, "study");
        long id = _studies.Begin(s_marks).ValueOrThrow().Entry.Id;
        Assert.Equal(("STUDY_NOT_READY", "no photo is there yet"), (Standing(id).NotYet!.Code.Name, Standing(id).NotYet!.Message));
        for (int i = 0; i < 4; i++)
        {
            string who = s_marks.People[i / 2];
            Directory.CreateDirectory(Path.Combine(folder, who));
            File.WriteAllBytes(Path.Combine(folder, who, $"{i}.jpg"), photos[i]);
            Assert.True(_desk.Add(id, who, photos[i], $"C:\\a\\{i}\u0007.jpg").ValueOrThrow().IsNew);
        }

        StudyAnswer once = RunStudy.Run(new(StudyFolder.Read(folder).ValueOrThrow(), Length.FromMillimetres(0.5), 0.25, AnovaDenominator.Interaction, 0.5)).ValueOrThrow();
        StudyStanding standing = Standing(id);
        Assert.Equal(0, standing.Missing);
        foreach (StudyPart part in once.U.Study.Components.Keys)
        {
            Assert.Equal(once.U.Study[part].Variance, standing.Marks!.U.Study[part].Variance);
            Assert.Equal(once.V.Study[part].Interval, standing.Marks.V.Study[part].Interval);
        }

        Assert.Equal(once.U.Repeatability, standing.Marks!.U.Repeatability);
        Assert.DoesNotContain(_studies.Find(id).ValueOrThrow().Photos, p => p.File.Any(char.IsControl));

        // The same photo counts once, and for one person.
        StudyPhotoReceipt again = _desk.Add(id, "berta", photos[3], "again.jpg").ValueOrThrow();
        Assert.Equal((4, false, 5), (again.Number, again.IsNew, again.Study.Entry.Version));
        Refused("STUDY_PHOTO_TWICE", _desk.Add(id, "anna", photos[3], "again.jpg"));
        Refused("STUDY_PHOTOS_ENOUGH", _desk.Add(id, "anna", StudyPhotos.Target(5), "more.jpg"));
        Refused("STUDY_PERSON_UNKNOWN", _desk.Add(id, "carla", StudyPhotos.Target(5), "more.jpg"));
        Refused("STUDY_CONFLICT", _studies.Put(id, new("part,operator,repeat,u,v\n", false), ExpectedVersion.Any));

        // With one photo less there is no result; who has photos stays in the plan.
        Refused("CHANGED_MEANWHILE", _studies.RemovePhoto(id, 4, ExpectedVersion.OneOf(4)));
        _studies.RemovePhoto(id, 4, ExpectedVersion.OneOf(5)).ValueOrThrow();
        Assert.Equal((1, null), (Standing(id).Missing, Standing(id).Marks));
        Refused("STUDY_CONFLICT", _studies.Describe(id, s_marks with { People = ["anna", "carla"] }, ExpectedVersion.Any));
        Refused("STUDY_CONFLICT", _studies.Describe(id, StudySetup.OfPulses("tape", null, 6).ValueOrThrow(), ExpectedVersion.Any));
        KeptStudy wider = _studies.Describe(id, s_marks with { People = ["anna", "berta", "carla"], Count = 3 }, ExpectedVersion.Any).ValueOrThrow();
        Assert.Equal(6, StudyStanding.Of(wider).Missing);
        _studies.Remove(id, ExpectedVersion.OneOf(7)).ValueOrThrow();
        Refused("NOT_KEPT", _desk.Add(id, "anna", photos[0], "x.jpg"));
    }

    [Fact]
    public void What_is_no_photo_is_not_kept_and_what_shows_too_little_is_kept_with_the_reason()
    {
        long id = _studies.Begin(s_marks).ValueOrThrow().Entry.Id;
        Refused("PHOTO_FORMAT", _desk.Add(id, "anna", "no photo"u8.ToArray(), "x"));
        Assert.Equal("STUDY_FEW_MARKS", _desk.Add(id, "anna", StudyPhotos.Of(1, (1, 2)), "one.jpg").ValueOrThrow().Photo.Refusal!.Code.Name);
        StudyPhotoReceipt none = _desk.Add(id, "anna", StudyPhotos.Of(2), "none.jpg").ValueOrThrow();
        Assert.Equal("NO_MARK", none.Photo.Refusal!.Code.Name);
        Assert.Equal((2, 0, 4), (none.Study.Photos.Count, none.Study.UsedOf("anna"), StudyStanding.Of(none.Study).Missing));
    }

    [Fact]
    public void Pulses_give_a_scatter_that_a_machine_takes_for_its_later_visits()
    {
        long id = _studies.Begin(StudySetup.OfPulses("press", Length.FromMillimetres(480), 4).ValueOrThrow()).ValueOrThrow().Entry.Id;
        List<string> files = [];
        for (int i = 0; i < 4; i++)
        {
            byte[] photo = StudyPhotos.Pulse(i);
            files.Add(Path.Combine(_temporary.Folder.Root, $"{i}.jpg"));
            File.WriteAllBytes(files[i], photo);
            Assert.Equal(3 - i, StudyStanding.Of(_desk.Add(id, "", photo, $"{i}.jpg").ValueOrThrow().Study).Missing);
        }

        ScatterAnswer once = RunScatter.Run(RunScatter.FromPhotos(files).ValueOrThrow(), Length.FromMillimetres(480), RunScatter.UsualWidth).ValueOrThrow();
        ScatterAnswer found = Standing(id).Scatter!;
        Assert.Equal(once.Scatter.Component, found.Scatter.Component);
        Assert.Equal(once.Scatter.AngularStability(once.Path!.Value), found.Scatter.AngularStability(found.Path!.Value));

        const string Document = """{ "name": "press", "legs": [ { "name": "1", "nearPath": 80, "farPath": 480, "myOwn": "kept" }, { "name": "2", "nearPath": 60, "farPath": 560 } ] }""";
        KeptMachine machine = _machines.Add(MachineFile.Read(Encoding.UTF8.GetBytes(Document)).ValueOrThrow()).ValueOrThrow();
        Assert.Equal(ScatterEntry.Usual, ScatterEntry.Now(machine));
        ScatterEntry entry = new(_studies, _machines);
        KeptMachine entered = entry.Enter(id, machine.Entry.Id, ExpectedVersion.OneOf(1)).ValueOrThrow();
        Assert.Equal((2, found.ForVisits!.Value), (entered.Entry.Version, ScatterEntry.Now(entered)!.Value.Millimetres));
        Assert.Contains("\"myOwn\": \"kept\"", entered.Text, StringComparison.Ordinal);
        Refused("CHANGED_MEANWHILE", entry.Enter(id, machine.Entry.Id, ExpectedVersion.OneOf(1)));
        Refused("NOT_KEPT", entry.Enter(id, 99, ExpectedVersion.Any));
        Refused("STUDY_NOT_READY", entry.Enter(_studies.Begin(s_marks).ValueOrThrow().Entry.Id, machine.Entry.Id, ExpectedVersion.Any));
    }

    /// <summary>By hand: su² = (0.1² + 0² + 0.1²)/2, sv² = (0.2² + 0.2² + 0²)/2 about means of 0; the component is the root of their mean.</summary>
    [Fact]
    public void A_table_stands_in_place_of_photos()
    {
        long id = _studies.Begin(StudySetup.OfPulses("table", null, 12).ValueOrThrow()).ValueOrThrow().Entry.Id;
        Refused("READINGS_UNREADABLE", _desk.Put(id, "u,w\n1,2"u8.ToArray(), false, ExpectedVersion.Any));
        Refused("TOO_FEW_PULSES", _desk.Put(id, "u,v\n1,2\n2,1"u8.ToArray(), false, ExpectedVersion.Any));
        Assert.False(_studies.Find(id).ValueOrThrow().Entry.HasReadings);
        KeptStudy kept = _desk.Put(id, Encoding.UTF8.GetBytes("\uFEFFu;v\n-0,1;0,2\n0;-0,2\n0,1;0\n"), false, ExpectedVersion.OneOf(1)).ValueOrThrow();
        Assert.Equal(Math.Sqrt((0.01 + 0.04) / 2), StudyStanding.Of(kept).Scatter!.Scatter.Component.Observed, 1e-12);
        Assert.Equal((0, 3), (StudyStanding.Of(kept).Missing, StudyStanding.Of(kept).Pulses));
        Refused("STUDY_CONFLICT", _desk.Add(id, "", StudyPhotos.Pulse(1), "x.jpg"));
        Assert.Equal(2, _desk.Put(id, Encoding.UTF8.GetBytes(kept.Readings!.Text), false, ExpectedVersion.Any).ValueOrThrow().Entry.Version);
        Assert.Null(_studies.Put(id, null, ExpectedVersion.OneOf(2)).ValueOrThrow().Readings);
    }

    /// <summary>Seen from several sides, a tape above the card moves its marks; with its height stated they stay.</summary>
    [Fact]
    public void The_height_of_the_tape_is_allowed_for_in_every_photo_and_does_not_change_under_them()
    {
        StudySetup stated = s_marks.With(new(TapeHeight: 3, TapeHeightUncertainty: 0.02)).ValueOrThrow();
        (long with, long without) = (_studies.Begin(stated).ValueOrThrow().Entry.Id, _studies.Begin(s_marks).ValueOrThrow().Entry.Id);
        for (int i = 0; i < 4; i++)
        {
            byte[] photo = StudyPhotos.High(i, 3);
            foreach (long id in (long[])[with, without])
                Assert.Null(_desk.Add(id, s_marks.People[i / 2], photo, $"{i}.jpg").ValueOrThrow().Photo.Refusal);
        }

        double Scatter(long id) => Standing(id).Marks!.Worse.Study[StudyPart.Gauge].StandardDeviation;
        Assert.InRange(Scatter(with), 0, 0.05);
        Assert.InRange(Scatter(without), 0.1, 3);
        Assert.Equal(stated.Card, _studies.Find(with).ValueOrThrow().Setup.Card);
        Refused("STUDY_CONFLICT", _studies.Describe(with, s_marks, ExpectedVersion.Any));
        Assert.Equal(3, _studies.Describe(with, stated with { Count = 3 }, ExpectedVersion.Any).ValueOrThrow().Setup.Count);
        foreach (int number in (int[])[1, 2, 3, 4])
            _studies.RemovePhoto(with, number, ExpectedVersion.Any).ValueOrThrow();
        Assert.Null(_studies.Describe(with, s_marks, ExpectedVersion.Any).ValueOrThrow().Setup.Card.TapeHeight);
    }

    [Fact]
    public void The_names_of_a_table_are_those_of_the_plan_whatever_their_capitals_and_blanks()
    {
        long id = _studies.Begin(s_marks with { People = ["Anna  Berg", "phone 2"] }).ValueOrThrow().Entry.Id;
        KeptStudy kept = Put(id, "anna berg", "PHONE\u00A02", " Anna Berg", "phone  2").ValueOrThrow();
        Assert.Equal(["Anna  Berg", "phone 2"], StudyStanding.Of(kept).Marks!.Request.Readings.All.Select(r => r.Operator).Distinct());
        // A name of the plan that stands in the table letter for letter is that one.
        KeptStudy alike = _studies.Describe(id, kept.Setup with { People = ["PHONE 2", "phone 2", "anna berg"] }, ExpectedVersion.Any).ValueOrThrow();
        Assert.Contains("phone 2", StudyStanding.Of(Put(id, "anna berg", "phone 2", "anna berg", "phone 2").ValueOrThrow()).Marks!.Request.Readings.All.Select(r => r.Operator));

        // Who is not in the plan is named, with those who are; the table that is there stays.
        Assert.False(Put(id, "anna berg", "Carla", "anna berg", "Dora").TryGet(out _, out Failure? failure));
        Assert.Equal(("STUDY_PERSON_UNKNOWN", "the table names 'Carla', 'Dora', who are not in the plan"), (failure.Code.Name, failure.Message));
        Assert.Contains("('PHONE 2', 'phone 2', 'anna berg')", failure.Hint, StringComparison.Ordinal);
        Assert.NotNull(Standing(id).Marks);
        _studies.Describe(id, alike.Setup with { People = ["phone 2", "Carla"] }, ExpectedVersion.Any).ValueOrThrow();
        Assert.Equal("the table names 'anna berg', who is not in the plan", Standing(id).NotYet!.Message);
    }

    // Two marks, each read twice by two people; who reads first and second is spelled in four ways.
    private Outcome<KeptStudy> Put(long id, string a1, string b1, string a2, string b2)
    {
        List<string> rows = ["part;operator;repeat;u;v"];
        foreach ((string name, int repeat, double at) in (ReadOnlySpan<(string, int, double)>)[(a1, 1, 0.1), (b1, 1, 0.3), (a2, 2, 0.2), (b2, 2, 0.35)])
            rows.AddRange(from part in (int[])[1, 2] select string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{part};{name};{repeat};{part + at};{part - (at * part)}"));
        return _desk.Put(id, Encoding.UTF8.GetBytes(string.Join('\n', rows)), false, ExpectedVersion.Any);
    }

    private StudyStanding Standing(long id) => StudyStanding.Of(_studies.Find(id).ValueOrThrow());

    private static void Refused<T>(string code, Outcome<T> outcome)
        where T : class
    {
        Assert.False(outcome.TryGet(out _, out Failure? failure));
        Assert.Equal(code, failure.Code.Name);
    }
}
