using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using MarkReader.Application.Practising;
using MarkReader.Application.Records;
using MarkReader.Application.Reports;
using MarkReader.Application.Shims;
using MarkReader.Application.Storage;
using MarkReader.Application.Tests.Storage;
using MarkReader.Application.VisitLog;
using MarkReader.Practice.Machines;
using MarkReader.Quantities;

namespace MarkReader.Application.Tests.Records;

/// <summary>A practice visit that is kept, from its beginning to its end; its first pulses are photographed and measured in the photos, one event is taken back.</summary>
public sealed class RecordedVisit : IDisposable, IPracticeMeasurement
{
    public const string Note = "Stopped cutting <b>on the right</b> & \"after the move\"";

    private readonly TemporaryFolder _temporary = new();
    private readonly int _photographed;

    public RecordedVisit()
    {
        // Each photo takes seconds; all are taken for people who look at the pages.
        _photographed = Pictures is null ? 3 : int.MaxValue;
        Database = _temporary.Open();
        Photos = TemporaryFolder.Photos(Database);
        PhotoDesk = new(Photos, new(Database, TimeProvider.System));
        Visits = new(Database, TimeProvider.System);
        Desk = new(Visits, Photos, new(Database, TimeProvider.System));
        PracticeRequest request = new(6, Twist: 1);
        Id = Visits.Begin(new(null, Note, "A. Turner", request)).ValueOrThrow().Entry.Id;
        PracticeSession session = PracticeSession.Begin(request, UsualStock.Washers, this).ValueOrThrow();
        PlayPractice.Run(session, null, step =>
        {
            if (session.Steps.Count == 2)
            {
                Add("""{ "kind": "mark", "leg": "1", "path": 480, "u": 9.5, "v": -7.25, "uncertainty": 0.05, "note": "=wrong tape" }""");
                Desk.TakeBack(Id, ExpectedVersion.Any).ValueOrThrow();
            }

            Add(Event(session, step));
        }).ValueOrThrow();
    }

    public Database Database { get; }

    public PhotoStore Photos { get; }

    public PhotoDesk PhotoDesk { get; }

    public VisitStore Visits { get; }

    public VisitDesk Desk { get; }

    public long Id { get; }

    /// <summary>A folder for people to look into; null in usual runs.</summary>
    public static string? Pictures { get; } = Environment.GetEnvironmentVariable("MARKREADER_SCREENS");

    public KeptVisit Kept => Visits.Find(Id).ValueOrThrow();

    public VisitRecord Record { get => field ??= RecordMaker.Make(RecordSource.Of(Kept), new KeptRecordPhotos(Photos), new(2026, 11, 26, 12, 0, 0, TimeSpan.Zero)).ValueOrThrow(); private set; }

    public VisitAddition Add(string text) => Desk.Append(Id, Encoding.UTF8.GetBytes(text), Guid.NewGuid().ToString("N"), ExpectedVersion.Any).ValueOrThrow();

    public Outcome<MeasuredMark> Measure(BurnMark mark, int number, Random random)
    {
        if (number > _photographed)
            return new MeasuredMark(mark.Measured);
        byte[] photo = PulsePhoto.Take(PulsePhoto.Cards, mark, random).ValueOrThrow();
        string id = PhotoDesk.Keep(photo).ValueOrThrow().Photo.Id;
        MarkReport seen = Marks(id).MaxBy(m => m.Diameter)!;
        return new MeasuredMark(new(new(seen.U, seen.V), Covariance2.Isotropic(0.06)), id);
    }

    public void Dispose() => _temporary.Dispose();

    private IReadOnlyList<MarkReport> Marks(string photo) =>
        JsonSerializer.Deserialize<MeasureReport>(((KeptAnswer.Report)PhotoDesk.Measure(photo).ValueOrThrow().Answer).Json, ReportJson.Options)!.Marks;

    private string Event(PracticeSession session, PracticeStep step)
    {
        JsonObject e = JsonNode.Parse(PracticeVisitFile.Write(session))!["events"]!.AsArray()[^1]!.AsObject();
        if (step.Mark?.Photo is not { } photo)
            return e.ToJsonString();
        foreach (string name in new[] { "u", "v", "covariance" })
            e.Remove(name);
        IReadOnlyList<MarkReport> marks = Marks(photo);
        e["photo"] = photo;
        e["mark"] = marks.ToList().FindIndex(m => m == marks.MaxBy(x => x.Diameter));
        return e.ToJsonString();
    }
}
