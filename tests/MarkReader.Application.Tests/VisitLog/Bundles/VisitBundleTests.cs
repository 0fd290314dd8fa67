using System.IO.Compression;
using System.Text;
using MarkReader.Application.Machines;
using MarkReader.Application.Practising;
using MarkReader.Application.Records;
using MarkReader.Application.Reports;
using MarkReader.Application.Storage;
using MarkReader.Application.Tests.Advising;
using MarkReader.Application.Tests.Storage;
using MarkReader.Application.VisitLog;
using MarkReader.Application.VisitLog.Bundles;
using MarkReader.Cards;
using MarkReader.Quantities;

namespace MarkReader.Application.Tests.VisitLog.Bundles;

public sealed class VisitBundleTests : IDisposable
{
    private const string Mark = """{ "kind": "mark", "leg": "1",  "path": 80.50, "u": 0.4, "v": 0.2, "uncertainty": 0.05 }""";

    private readonly Installation _home = new(), _other = new();
    private readonly long _id;
    private readonly string _photo;

    public VisitBundleTests()
    {
        long machine = _home.Machines.Add(MachineFile.Read(Encoding.UTF8.GetBytes(VisitTexts.Machine)).ValueOrThrow()).ValueOrThrow().Entry.Id;
        _id = _home.Visits.Begin(new(machine, "after the\nmove", "A. Turner")).ValueOrThrow().Entry.Id;
        _photo = _home.PhotoDesk.Keep(s_tape.Value).ValueOrThrow().Photo.Id;
        Assert.True(_home.PhotoDesk.Measure(_photo).ValueOrThrow().Answer is KeptAnswer.Report);
        _home.Add(_id, Mark, "a");
        _home.Add(_id, Mark.Replace("0.4", "7.5", StringComparison.Ordinal), "b");
        _home.Desk.TakeBack(_id, ExpectedVersion.Any).ValueOrThrow();
        _home.Add(_id, $$"""{ "kind": "mark", "leg": "1", "path": 480, "photo": "{{_photo}}", "mark": 0 }""", "c");
    }

    public void Dispose()
    {
        _home.Dispose();
        _other.Dispose();
    }

    [Fact]
    public void Another_installation_gets_the_same_visit_the_same_advice_and_the_same_photos()
    {
        BundleReceipt receipt = _other.Import(_home.Export(_id)).ValueOrThrow();
        KeptVisit sent = _home.Visits.Find(_id).ValueOrThrow(), kept = receipt.Visit;
        Assert.True(receipt.IsNew);
        Assert.Null(kept.Entry.MachineId);
        Assert.Equal(sent.Entry with { Id = kept.Entry.Id, MachineId = null }, kept.Entry);
        Assert.Equal((sent.Machine, sent.File()), (kept.Machine, kept.File()));
        Assert.Equal(sent.All, kept.All);
        Assert.Equal(Advice(sent), Advice(kept));
        Assert.Equal(_home.Photos.Read(_photo).ValueOrThrow().Bytes, _other.Photos.Read(_photo).ValueOrThrow().Bytes);
        // The diameter comes from what was measured in the photo.
        Assert.Equal(Numbers(_home, sent), Numbers(_other, kept));

        // A repeated request is known there as well, and the work goes on.
        Assert.Equal(1, _other.Add(kept.Entry.Id, Mark, "a").Event.Number);
        Assert.Equal(4, _other.Add(kept.Entry.Id, Mark, "d").Event.Number);

        static string Numbers(Installation at, KeptVisit visit) =>
            Encoding.UTF8.GetString(RecordCsv.Write(RecordMaker.Make(RecordSource.Of(visit), new KeptRecordPhotos(at.Photos), DateTimeOffset.UnixEpoch).ValueOrThrow()));
    }

    [Fact]
    public void A_file_that_comes_again_gives_the_visit_that_is_there_and_one_with_more_gives_a_new_one()
    {
        byte[] first = _home.Export(_id);
        Assert.Equal(first, _home.Export(_id));
        long there = _other.Import(first).ValueOrThrow().Visit.Entry.Id;
        BundleReceipt again = _other.Import(first).ValueOrThrow();
        Assert.Equal((there, false), (again.Visit.Entry.Id, again.IsNew));
        BundleReceipt back = _home.Import(_other.Export(there)).ValueOrThrow();
        Assert.Equal((_id, false), (back.Visit.Entry.Id, back.IsNew));

        _home.Add(_id, Mark, "later");
        Assert.False(_home.Import(first).ValueOrThrow().IsNew);
        BundleReceipt more = _other.Import(_home.Export(_id)).ValueOrThrow();
        Assert.True(more.IsNew);
        Assert.NotEqual(there, more.Visit.Entry.Id);
        Assert.False(_other.Import(first).ValueOrThrow().IsNew);
    }

    [Fact]
    public void A_machine_with_the_same_document_is_the_visit_s_machine()
    {
        _other.Machines.Add(MachineFile.Read(Encoding.UTF8.GetBytes(VisitTexts.Machine.Replace("500", "501", StringComparison.Ordinal))).ValueOrThrow()).ValueOrThrow();
        long machine = _other.Machines.Add(MachineFile.Read(Encoding.UTF8.GetBytes(VisitTexts.Machine)).ValueOrThrow()).ValueOrThrow().Entry.Id;
        Assert.Equal(machine, _other.Import(_home.Export(_id)).ValueOrThrow().Visit.Entry.MachineId);
    }

    [Fact]
    public void A_photo_that_was_measured_here_keeps_its_own_measurement()
    {
        _other.PhotoDesk.Keep(_home.Photos.Read(_photo).ValueOrThrow().Bytes).ValueOrThrow();
        _other.Photos.KeepMeasurement(_photo, "own", new KeptAnswer.Refusal(new(StorageFailures.NotAPhoto, "what", "hint"))).ValueOrThrow();
        _other.Import(_home.Export(_id)).ValueOrThrow();
        Assert.Equal("own", _other.Photos.FindMeasurement(_photo).ValueOrThrow().ProgramVersion);
    }

    public static TheoryData<string, string> Hostile => new()
    {
        { "BUNDLE_UNREADABLE", "empty" },
        { "BUNDLE_UNREADABLE", "cut" },
        { "BUNDLE_UNREADABLE", "no visit" },
        { "BUNDLE_UNREADABLE", "many entries" },
        { "BUNDLE_ENTRY_UNKNOWN", "path out" },
        { "BUNDLE_ENTRY_UNKNOWN", "twice" },
        { "BUNDLE_TOO_LARGE", "bomb" },
        { "BUNDLE_PHOTO_WRONG", "photo changed" },
        { "BUNDLE_PHOTO_WRONG", "photo missing" },
        { "BUNDLE_PHOTO_WRONG", "photo too many" },
        { "BUNDLE_NEWER", "\"version\": 1|\"version\": 2" },
        { "BUNDLE_UNREADABLE", "markreader-visit|other" },
        { "BUNDLE_UNREADABLE", "\"key\": \"b\"|\"key\": \"a\"" },
        { "BUNDLE_UNREADABLE", "\"addedVersion\": 3|\"addedVersion\": 2" },
        { "BUNDLE_UNREADABLE", "\"takenBackVersion\": 4|\"takenBackVersion\": 3" },
        { "BUNDLE_UNREADABLE", "\"visitVersion\": 5|\"visitVersion\": 4" },
        { "BUNDLE_UNREADABLE", "\"doneBy\": \"A. Turner\"|\"doneBy\": \"A.\\u0007\"" },
        { "BUNDLE_UNREADABLE", "\"photos\": [|\"photos\": [ {\"id\": \"../../etc/passwd\"}, " },
        { "VISIT_UNREADABLE", "\"u\": 7.5|\"u\": 7e9" },
        { "VISIT_UNREADABLE", "\"kind\": \"mark\", \"leg\": \"1\",  \"path\": 80.50, \"u\": 0.4|\"kind\": \"dance\", \"u\": 0.4" },
        { "LEG_UNKNOWN", "\"leg\": \"1\",  \"path\": 80.50, \"u\": 7.5|\"leg\": \"3\",  \"path\": 80.50, \"u\": 7.5" },
        { "LEG_TOLERANCE_INVALID", "\"tolerance\": 0.5,|\"tolerance\": -0.5," },
    };

    [Theory]
    [MemberData(nameof(Hostile))]
    public void A_file_that_is_not_as_it_was_made_is_refused_and_nothing_of_it_is_kept(string code, string how)
    {
        byte[] file = Made(_home.Export(_id), how);
        Assert.False(_other.Import(file).TryGet(out _, out Failure? failure));
        Assert.Equal(code, failure.Code.Name);
        Assert.NotEmpty(failure.Hint);
        Assert.Empty(_other.Visits.List(null, 1).ValueOrThrow().Items);
        Assert.Empty(_other.Photos.List(null, 1).ValueOrThrow().Items);
    }

    private byte[] Made(byte[] file, string how)
    {
        string photo = $"photos/{_photo}.jpg";
        switch (how)
        {
            case "empty":
                return [];
            case "cut":
                return file[..(file.Length * 2 / 3)];
            case "no visit":
                return Changed(file, zip => zip.GetEntry("visit.json")!.Delete());
            case "many entries":
                return Changed(file, zip => Enumerable.Range(0, 1100).ToList().ForEach(i => zip.CreateEntry($"photos/{i:x64}.jpg")));
            case "path out":
                return Changed(file, zip => Fill(zip.CreateEntry("../../evil.jpg"), [1]));
            case "twice":
                return Changed(file, zip => Fill(zip.CreateEntry("visit.json"), "{}"u8.ToArray()));
            case "bomb":
                return Changed(file, zip =>
                {
                    zip.GetEntry("visit.json")!.Delete();
                    Fill(zip.CreateEntry("visit.json", CompressionLevel.SmallestSize), new byte[11 << 20]);
                });
            case "photo changed":
                return Changed(file, zip =>
                {
                    zip.GetEntry(photo)!.Delete();
                    Fill(zip.CreateEntry(photo), SomePhotos.Jpeg(1));
                });
            case "photo missing":
                return Changed(file, zip => zip.GetEntry(photo)!.Delete());
            case "photo too many":
                return Changed(file, zip => Fill(zip.CreateEntry($"photos/{new string('a', 64)}.jpg"), [1]));
            default:
                return Changed(file, zip =>
                {
                    string[] parts = how.Split('|');
                    ZipArchiveEntry entry = zip.GetEntry("visit.json")!;
                    string text;
                    using (StreamReader reader = new(entry.Open()))
                        text = reader.ReadToEnd();
                    Assert.Contains(parts[0], text, StringComparison.Ordinal);
                    entry.Delete();
                    Fill(zip.CreateEntry("visit.json"), Encoding.UTF8.GetBytes(text.Replace(parts[0], parts[1], StringComparison.Ordinal)));
                });
        }
    }

    private static byte[] Changed(byte[] file, Action<ZipArchive> change)
    {
        using MemoryStream stream = new();
        stream.Write(file);
        using (ZipArchive zip = new(stream, ZipArchiveMode.Update, leaveOpen: true))
            change(zip);
        return stream.ToArray();
    }

    private static void Fill(ZipArchiveEntry entry, byte[] bytes)
    {
        using Stream stream = entry.Open();
        stream.Write(bytes);
    }

    private static string Advice(KeptVisit visit) => ReportJson.Write(VisitReport.From(VisitDesk.Advise(visit).ValueOrThrow()));

    // One for all tests: to draw it takes a second or two.
    private static readonly Lazy<byte[]> s_tape = new(() => PracticePhotographer.Photograph(
        TapedTarget.Fresh(CardKinds.Find("plate")!, 5).Burn(new(1.2, -0.6), Length.FromMillimetres(2)).ValueOrThrow(), new Random(3)));

    private sealed class Installation : IDisposable
    {
        private readonly TemporaryFolder _temporary = new();

        public Installation()
        {
            Database database = _temporary.Open();
            Photos = TemporaryFolder.Photos(database);
            PhotoDesk = new(Photos, new(database, TimeProvider.System));
            Machines = new(database, TimeProvider.System);
            Visits = new(database, TimeProvider.System);
            Desk = new(Visits, Photos, new(database, TimeProvider.System));
            Bundles = new(database, Visits, Photos, PhotoDesk);
        }

        public PhotoStore Photos { get; }

        public PhotoDesk PhotoDesk { get; }

        public MachineStore Machines { get; }

        public VisitStore Visits { get; }

        public VisitDesk Desk { get; }

        private BundleDesk Bundles { get; }

        public VisitAddition Add(long id, string text, string key) => Desk.Append(id, Encoding.UTF8.GetBytes(text), key, ExpectedVersion.Any).ValueOrThrow();

        public byte[] Export(long id)
        {
            using MemoryStream stream = new();
            Bundles.Write(id, stream).ValueOrThrow();
            return stream.ToArray();
        }

        public Outcome<BundleReceipt> Import(byte[] file)
        {
            using MemoryStream stream = new(file);
            if (!VisitBundle.Open(stream).TryGet(out VisitBundle? bundle, out Failure? failure))
                return failure;
            using (bundle)
                return Bundles.Import(bundle);
        }

        public void Dispose() => _temporary.Dispose();
    }
}
