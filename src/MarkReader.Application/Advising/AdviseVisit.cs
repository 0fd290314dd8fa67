using System.Text;
using MarkReader.Alignment.Visits;
using MarkReader.Application.VisitLog;
using MarkReader.Quantities;

namespace MarkReader.Application.Advising;

/// <summary>From a visit file to the next action.</summary>
public static class AdviseVisit
{
    public static Outcome<VisitAdvice> Run(ReadOnlyMemory<byte> bytes) => Run(bytes, null);

    /// <summary>The advice of a visit that is kept, as it was at a version; events are called by their numbers in it.</summary>
    public static Outcome<VisitAdvice> At(KeptVisit visit, long version)
    {
        (int, string)[] events = [.. visit.EventsAt(version).Select(e => (e.Number, e.Text))];
        return Run(Encoding.UTF8.GetBytes(visit.FileAt(version)), StepWords.Of(events)).TryGet(out VisitAdvice? advice, out Failure? failure) ? advice : StepWords.Name(failure, events);
    }

    /// <param name="events">What warnings call an event, by its place from 1; null for that place.</param>
    internal static Outcome<VisitAdvice> Run(ReadOnlyMemory<byte> bytes, Func<int, Wording>? events)
    {
        if (!VisitFile.Read(bytes, events).TryGet(out Visit? visit, out Failure? failure) || !VisitAdviser.Advise(visit.Setup, visit.Events).TryGet(out VisitAdvice? advice, out failure))
            return failure;
        return advice with { Warnings = [.. visit.Warnings, .. advice.Warnings] };
    }

    /// <summary>The machine and the events that count of a visit that is kept.</summary>
    public static Outcome<Visit> Read(KeptVisit visit) => Read(visit, visit.Events);

    /// <summary>The machine and some of the events of a visit that is kept, those that were taken back for example.</summary>
    public static Outcome<Visit> Read(KeptVisit visit, IEnumerable<KeptEvent> events) => VisitFile.Read(Encoding.UTF8.GetBytes(visit.FileOf(events)));
}
