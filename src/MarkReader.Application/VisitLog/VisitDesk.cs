using System.Security.Cryptography;
using System.Text;
using MarkReader.Alignment.Visits;
using MarkReader.Application.Advising;
using MarkReader.Application.Storage;
using MarkReader.Quantities;

namespace MarkReader.Application.VisitLog;

/// <summary>Takes in the events of visits: what is kept is always a visit that advice can be given on.</summary>
public sealed class VisitDesk(VisitStore visits, PhotoStore photos)
{
    /// <summary>Largest event, bytes.</summary>
    public const int MostEventBytes = 4 << 10;

    private const int LongestKey = 100, MostTries = 20;

    /// <summary>The next action of a visit.</summary>
    public static Outcome<VisitAdvice> Advise(KeptVisit visit) => AdviseVisit.Run(Encoding.UTF8.GetBytes(visit.File()));

    /// <summary>
    /// Adds an event. A request that is repeated with its key is answered as it was the first time, whatever has happened since, and adds nothing.
    /// </summary>
    /// <param name="bytes">One event (JSON), at most <see cref="MostEventBytes"/>.</param>
    /// <param name="key">Chosen by the client for this event: 1 to 100 visible ASCII signs.</param>
    /// <param name="expected">The versions of the visit that the event was meant for.</param>
    public Outcome<VisitStep> Append(long id, ReadOnlyMemory<byte> bytes, string key, ExpectedVersion expected)
    {
        if (key.Length is 0 or > LongestKey || !key.All(c => c is > ' ' and <= '~'))
            return new Failure(VisitLogFailures.KeyInvalid, "the event has no key of its own", $"choose one at random for each event, 1 to {LongestKey} letters and digits, and repeat it only with the same event");
        EventRequest request = new(key, Convert.ToHexStringLower(SHA256.HashData(bytes.Span)));
        Failure? failure = null;
        // Advice may take a while: no lock is held meanwhile, and when someone else was quicker it is worked out again.
        for (int i = 0; i < MostTries; i++)
        {
            if (!visits.Find(id).TryGet(out KeptVisit? visit, out failure))
                return failure;
            if (visit.All.FirstOrDefault(e => e.Request.Key == key) is { } earlier)
                return earlier.Request == request ? Again(visit, earlier) : KeyReused();
            if (!expected.Admits(visit.Entry.Version))
                return StorageFailures.ChangedMeanwhile($"visit {id}", visit.Entry.Version);
            if (!Check(visit, bytes).TryGet(out Checked? next, out failure))
                return failure;
            if (visits.Append(id, next.Event, request, visit.Entry.Version).TryGet(out KeptVisit? changed, out failure))
                return new VisitStep(id, changed.All[^1], next.Advice);
            if (failure.Code != StorageFailures.Changed)
                return failure;
        }

        return failure!;
    }

    private Outcome<Checked> Check(KeptVisit visit, ReadOnlyMemory<byte> bytes)
    {
        if (!EventDocument.Read(bytes, photos).TryGet(out EventDocument? e, out Failure? failure))
            return failure;
        byte[] file = Encoding.UTF8.GetBytes(visit.FileWith(e.Text));
        if (file.Length > VisitFile.MostBytes)
            return new Failure(VisitLogFailures.TooLarge, $"the visit's file would have more than {VisitFile.MostBytes >> 20} MB", "begin a new visit");
        return AdviseVisit.Run(file).TryGet(out VisitAdvice? advice, out failure) ? new Checked(e, advice) : failure;
    }

    private static Outcome<VisitStep> Again(KeptVisit visit, KeptEvent e) =>
        AdviseVisit.Run(Encoding.UTF8.GetBytes(visit.FileAt(e.AddedVersion))).TryGet(out VisitAdvice? advice, out Failure? failure) ? new VisitStep(visit.Entry.Id, e, advice) : failure;

    private static Failure KeyReused() => new(VisitLogFailures.KeyReused, "this key came with another event before", "choose a new key for a new event");

    private sealed record Checked(EventDocument Event, VisitAdvice Advice);
}

/// <summary>An event that was added, and what to do next as it was then.</summary>
public sealed record VisitStep(long VisitId, KeptEvent Event, VisitAdvice Advice);
