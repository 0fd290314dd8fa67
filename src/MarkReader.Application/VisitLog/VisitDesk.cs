using System.Text;
using MarkReader.Alignment.Visits;
using MarkReader.Application.Advising;
using MarkReader.Application.Cameras;
using MarkReader.Application.Storage;
using MarkReader.Quantities;

namespace MarkReader.Application.VisitLog;

/// <summary>Takes in the events of visits: what is kept is always a visit that advice can be given on.</summary>
public sealed class VisitDesk(VisitStore visits, PhotoStore photos, CameraStore cameras)
{
    /// <summary>Largest event, bytes.</summary>
    public const int MostEventBytes = 4 << 10;

    private const int MostTries = 20;

    /// <summary>The next action of a visit.</summary>
    public static Outcome<VisitAdvice> Advise(KeptVisit visit) =>
        AdviseVisit.At(visit, visit.Entry.Version);

    /// <summary>
    /// Adds an event. A request that is repeated with its key is answered as it was the first time, whatever has happened since, and adds nothing.
    /// </summary>
    /// <param name="bytes">One event (JSON), at most <see cref="MostEventBytes"/>.</param>
    /// <param name="key">Chosen by the client for this event: 1 to 100 visible ASCII signs.</param>
    /// <param name="expected">The versions of the visit that the event was meant for.</param>
    public Outcome<VisitAddition> Append(long id, ReadOnlyMemory<byte> bytes, string key, ExpectedVersion expected)
    {
        if (!RequestKey.Of(key, bytes.Span).TryGet(out RequestKey? request, out Failure? failure))
            return failure;
        EventDocument? document = null;
        // Advice may take a while: no lock is held meanwhile, and when someone else was quicker it is worked out again.
        for (int i = 0; i < MostTries; i++)
        {
            if (!visits.Find(id).TryGet(out KeptVisit? visit, out failure))
                return failure;
            if (visit.All.FirstOrDefault(e => e.Request.Key == key) is { } earlier)
                return earlier.Request == request ? Again(visit, earlier) : RequestKey.Reused();
            if (!expected.Admits(visit.Entry.Version))
                return StorageFailures.ChangedMeanwhile(VisitLogTexts.Say("visitDesk.visit", id), visit.Entry.Version);
            if (document is null && !EventDocument.Read(bytes, photos, cameras, visit).TryGet(out document, out failure))
                return failure;
            if (!Check(visit, document).TryGet(out Checked? next, out failure))
                return failure;
            if (visits.Append(id, next.Event, request, visit.Entry.Version).TryGet(out KeptVisit? changed, out failure))
                return new VisitAddition(id, changed.All[^1], next.Advice);
            if (failure.Code != StorageFailures.Changed)
                return failure;
        }

        return failure!;
    }

    /// <summary>Takes back the last event that counts. It stays in the record.</summary>
    public Outcome<KeptVisit> TakeBack(long id, ExpectedVersion expected) => TakeBack(id, null, expected);

    /// <summary>Takes back one event that counts, whatever came after it; what follows is advised as if it had not been. It stays in the record.</summary>
    /// <param name="number">The event's number; null for the last one.</param>
    public Outcome<KeptVisit> TakeBack(long id, int? number, ExpectedVersion expected)
    {
        if (!visits.Find(id).TryGet(out KeptVisit? visit, out Failure? failure))
            return failure;
        if (!expected.Admits(visit.Entry.Version))
            return StorageFailures.ChangedMeanwhile(VisitLogTexts.Say("visitDesk.visit", id), visit.Entry.Version);
        if (visit.Events.LastOrDefault(e => number is null || e.Number == number) is not { } wanted)
        {
            return number is { } none
                ? new Failure(VisitLogFailures.EventUnknown, VisitLogTexts.Word("visitDesk.visitHasNoEventThat", id, none), VisitLogTexts.Get("visitDesk.seeVisitForWhatCounts"))
                : new Failure(VisitLogFailures.NothingToTakeBack, VisitLogTexts.Word("visitDesk.visitHasNoEvent", id), VisitLogTexts.Get("visitDesk.seeVisitForWhatCounts"));
        }

        return AdviseVisit.Run(Encoding.UTF8.GetBytes(visit.FileWithout(wanted.Number))).TryGet(out _, out failure)
            ? visits.TakeBack(id, wanted.Number, visit.Entry.Version)
            : StepWords.Name(failure, Steps(visit.Events.Where(e => e.Number != wanted.Number)));
    }

    private static Outcome<Checked> Check(KeptVisit visit, EventDocument e)
    {
        byte[] file = Encoding.UTF8.GetBytes(visit.FileWith(e.Text));
        if (file.Length > VisitFile.MostBytes)
            return new Failure(VisitLogFailures.TooLarge, VisitLogTexts.Word("visitDesk.visitFileWouldHaveMore", VisitFile.MostBytes >> 20), VisitLogTexts.Get("visitDesk.beginNewVisit"));
        (int, string)[] events = [.. Steps(visit.Events), (visit.All.Select(kept => kept.Number).DefaultIfEmpty().Max() + 1, e.Text)];
        return AdviseVisit.Run(file, StepWords.Of(events)).TryGet(out VisitAdvice? advice, out Failure? failure) ? new Checked(e, advice) : StepWords.Name(failure, events);
    }

    private static IReadOnlyList<(int Number, string Text)> Steps(IEnumerable<KeptEvent> events) => [.. events.Select(e => (e.Number, e.Text))];

    private static Outcome<VisitAddition> Again(KeptVisit visit, KeptEvent e) =>
        AdviseVisit.At(visit, e.AddedVersion).TryGet(out VisitAdvice? advice, out Failure? failure) ? new VisitAddition(visit.Entry.Id, e, advice) : failure;

    private sealed record Checked(EventDocument Event, VisitAdvice Advice);
}

/// <summary>An event that was added, and what to do next as it was then.</summary>
public sealed record VisitAddition(long VisitId, KeptEvent Event, VisitAdvice Advice)
{
    /// <summary>Fields of the event that were not used.</summary>
    public IReadOnlyList<Warning> Ignored => EventJson.Ignored(Event.Text);
}
