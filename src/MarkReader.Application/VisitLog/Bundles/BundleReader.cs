using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using MarkReader.Application.Advising;
using MarkReader.Application.Machines;
using MarkReader.Application.Storage;
using MarkReader.Quantities;

namespace MarkReader.Application.VisitLog.Bundles;

/// <summary>Reads visit.json. What comes out is a visit that could have been kept here: every event was part of a visit that advice can be given on.</summary>
internal static partial class BundleReader
{
    private const int LongestMachineName = 100, LongestProgram = 60;

    // An event is filled in from a photo after its size was checked.
    private const int MostEventBytes = VisitDesk.MostEventBytes + 1024;

    private static readonly JsonDocumentOptions s_json = new() { MaxDepth = 32 };

    public static Outcome<BundledVisit> Read(ReadOnlyMemory<byte> bytes)
    {
        using JsonDocument? document = JsonText.Parse(bytes, s_json, out string unreadable);
        if (document is null)
            return BundleFailures.Wrong(VisitLogTexts.Say("bundleReader.visitInFile", unreadable));
        JsonFields fields = new(BundleFailures.Unreadable);
        JsonObject visit = fields.Object(
            document.RootElement, VisitLogTexts.Get("common.visit"), "format", "version", "origin", "machineName", "note", "doneBy", "begunAt", "changedAt", "visitVersion", "machine", "practice", "events", "photos");
        if (visit.Text("format") != BundleWriter.Format)
            fields.Refuse(VisitLogTexts.Get("bundleReader.fileHoldsNoVisit"), VisitLogTexts.Get("bundleReader.useFileThatCameFrom"));
        if (fields.Wrong is null && visit.Number("version") > BundleWriter.Version)
            return new Failure(BundleFailures.Newer, VisitLogTexts.Get("bundleReader.fileWasWrittenByLater"), VisitLogTexts.Get("bundleReader.bringThisProgramUpDate"));
        BundledVisit read = new(
            Matching(fields, visit, "origin", Origin()),
            Line(fields, visit, "machineName", LongestMachineName),
            "",
            "",
            Whole(fields, visit, "visitVersion"),
            Time(fields, visit, "begunAt"),
            Time(fields, visit, "changedAt"),
            visit.Find("machine")?.GetRawText() ?? "",
            Events(fields, visit),
            Photos(fields, visit))
        {
            Practice = visit.Find("practice") is { } practice ? VisitBeginning.Practise(fields, practice) : null,
        };
        VisitDescription words = VisitDescription.Read(fields, visit);
        read = read with { Note = words.Note, DoneBy = words.DoneBy };
        return (fields.Wrong ?? Check(read)) is { } wrong ? wrong : read;
    }

    private static List<KeptEvent> Events(JsonFields fields, JsonObject visit)
    {
        IReadOnlyList<JsonElement> list = visit.List("events", required: true);
        if (list.Count > BundleLimits.MostEvents)
            fields.Refuse(VisitLogTexts.Word("bundleReader.visitHasMoreThanEvents", BundleLimits.MostEvents), VisitLogTexts.Get("bundleReader.handOverVisitFileAlone"));
        List<KeptEvent> events = [];
        foreach (JsonElement element in list.Take(BundleLimits.MostEvents))
        {
            JsonObject e = fields.Object(element, VisitLogTexts.Word("bundleReader.event", events.Count + 1), "event", "photo", "key", "digest", "addedAt", "addedVersion", "takenBackAt", "takenBackVersion");
            string text = e.Find("event")?.GetRawText() ?? "";
            using JsonDocument? own = JsonText.Parse(Encoding.UTF8.GetBytes(text), new() { MaxDepth = 4 }, out _);
            if (own?.RootElement.ValueKind != JsonValueKind.Object || Encoding.UTF8.GetByteCount(text) > MostEventBytes)
                fields.Refuse(VisitLogTexts.Word("bundleReader.notOneEventVisit", e.Where), VisitLogTexts.Get("common.useFileAsCameFrom"));
            TakenBack? taken = e.Has("takenBackVersion") ? new(Time(fields, e, "takenBackAt"), Whole(fields, e, "takenBackVersion")) : null;
            events.Add(new(
                events.Count + 1,
                text,
                e.Has("photo") ? Matching(fields, e, "photo", Digest()) : null,
                new(Matching(fields, e, "key", Key()), Matching(fields, e, "digest", Digest())),
                Time(fields, e, "addedAt"),
                Whole(fields, e, "addedVersion"),
                taken));
        }

        return events;
    }

    private static List<BundledPhoto> Photos(JsonFields fields, JsonObject visit)
    {
        IReadOnlyList<JsonElement> list = visit.List("photos");
        if (list.Count > BundleLimits.MostPhotos)
            fields.Refuse(VisitLogTexts.Word("bundleReader.visitHasMoreThanPhotos", BundleLimits.MostPhotos), VisitLogTexts.Get("bundleReader.handOverVisitFileAlone"));
        List<BundledPhoto> photos = [];
        foreach (JsonElement element in list.Take(BundleLimits.MostPhotos))
        {
            JsonObject photo = fields.Object(element, VisitLogTexts.Word("bundleReader.photo", photos.Count + 1), "id", "measuredBy", "report");
            BundledMeasurement? measurement = photo.Find("report") is { } report && StrictReport.Read(report) is { } known
                ? new(Line(fields, photo, "measuredBy", LongestProgram), known)
                : null;
            photos.Add(new(Matching(fields, photo, "id", Digest()), measurement));
        }

        return photos;
    }

    private static Failure? Check(BundledVisit visit)
    {
        HashSet<long> versions = [];
        long last = 1;
        foreach (KeptEvent e in visit.All)
        {
            if (e.AddedVersion <= last || !versions.Add(e.AddedVersion) || (e.TakenBack is { } taken && (taken.Version <= e.AddedVersion || !versions.Add(taken.Version))))
                return BundleFailures.Wrong(VisitLogTexts.Get("bundleReader.eventsNotInOrderIn"));
            last = e.AddedVersion;
        }

        if (visit.All.DistinctBy(e => e.Request.Key).Count() != visit.All.Count)
            return BundleFailures.Wrong(VisitLogTexts.Get("bundleReader.twoEventsHaveSameKey"));
        if (versions.Any(v => v > visit.Version) || visit.Version < 1)
            return BundleFailures.Wrong(VisitLogTexts.Get("bundleReader.visitVersionBelowThatEvents"));
        if (visit.Photos.DistinctBy(p => p.Id).Count() != visit.Photos.Count || visit.Photos.Select(p => p.Id).ToHashSet() is var ids && !ids.SetEquals(visit.All.Select(e => e.Photo).OfType<string>()))
            return BundleFailures.Wrong(VisitLogTexts.Get("bundleReader.photosNotThoseEvents"));
        if (!MachineFile.Read(Encoding.UTF8.GetBytes(visit.Machine)).TryGet(out _, out Failure? failure))
            return failure;
        return Advice(visit.Visit);
    }

    // As each event was checked when it came: each counts at the end, or just before it was taken back.
    private static Failure? Advice(KeptVisit visit)
    {
        long[] moments = [.. visit.All.Select(e => e.TakenBack?.Version - 1).OfType<long>().Append(visit.Entry.Version).Distinct().Order()];
        if (moments.Length > BundleLimits.MostTakenBack)
            return BundleFailures.Large(VisitLogTexts.Get("bundleReader.moreEventsWereTakenBack"));
        foreach (long version in moments)
        {
            byte[] file = Encoding.UTF8.GetBytes(visit.FileAt(version));
            if (file.Length > VisitFile.MostBytes)
                return BundleFailures.Large(VisitLogTexts.Get("bundleReader.visitEventsLargerThanThey"));
            if (!AdviseVisit.At(visit, version).TryGet(out _, out Failure? failure))
                return failure;
        }

        return null;
    }

    private static string Matching(JsonFields fields, JsonObject of, string name, Regex pattern)
    {
        string text = of.Text(name);
        if (!pattern.IsMatch(text))
            fields.Refuse(VisitLogTexts.Word("bundleReader.notWhatShouldBe", name, of.Where), VisitLogTexts.Get("common.useFileAsCameFrom"));
        return text;
    }

    private static string Line(JsonFields fields, JsonObject of, string name, int longest)
    {
        string text = of.Text(name);
        if (text.Length == 0 || text.Length > longest || text.Any(char.IsControl))
            fields.Refuse(VisitLogTexts.Word("bundleReader.emptyLongerThanSignsOr", name, of.Where, longest), VisitLogTexts.Get("common.useFileAsCameFrom"));
        return text;
    }

    private static long Whole(JsonFields fields, JsonObject of, string name)
    {
        double value = of.Number(name);
        if (value is >= 1 and <= 1e9 && value == Math.Floor(value))
            return (long)value;
        fields.Refuse(VisitLogTexts.Word("bundleReader.notWholeNumber", name, of.Where), VisitLogTexts.Get("common.useFileAsCameFrom"));
        return 1;
    }

    private static DateTimeOffset Time(JsonFields fields, JsonObject of, string name)
    {
        if (Moment.TryParse(of.Text(name), out DateTimeOffset time))
            return time;
        fields.Refuse(VisitLogTexts.Word("bundleReader.notTimeInUtc", name, of.Where), VisitLogTexts.Get("common.useFileAsCameFrom"));
        return DateTimeOffset.UnixEpoch;
    }

    [GeneratedRegex("^[0-9a-f]{32}\\z", RegexOptions.CultureInvariant)]
    private static partial Regex Origin();

    [GeneratedRegex("^[0-9a-f]{64}\\z", RegexOptions.CultureInvariant)]
    private static partial Regex Digest();

    [GeneratedRegex("^[!-~]{1,100}\\z", RegexOptions.CultureInvariant)]
    private static partial Regex Key();
}
