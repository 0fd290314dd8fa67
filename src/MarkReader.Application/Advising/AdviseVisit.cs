using System.Text;
using MarkReader.Alignment.Visits;
using MarkReader.Application.VisitLog;
using MarkReader.Quantities;

namespace MarkReader.Application.Advising;

/// <summary>From a visit file to the next action.</summary>
public static class AdviseVisit
{
    public static Outcome<VisitAdvice> Run(ReadOnlyMemory<byte> bytes)
    {
        if (!VisitFile.Read(bytes).TryGet(out Visit? visit, out Failure? failure) || !VisitAdviser.Advise(visit.Setup, visit.Events).TryGet(out VisitAdvice? advice, out failure))
            return failure;
        return advice with { Warnings = [.. visit.Warnings, .. advice.Warnings] };
    }

    /// <summary>The advice of a visit that is kept, as it was at a version.</summary>
    public static Outcome<VisitAdvice> At(KeptVisit visit, long version) => Run(Encoding.UTF8.GetBytes(visit.FileAt(version)));

    /// <summary>The machine and the events that count of a visit that is kept.</summary>
    public static Outcome<Visit> Read(KeptVisit visit) => Read(visit, visit.Events);

    /// <summary>The machine and some of the events of a visit that is kept, those that were taken back for example.</summary>
    public static Outcome<Visit> Read(KeptVisit visit, IEnumerable<KeptEvent> events) => VisitFile.Read(Encoding.UTF8.GetBytes(visit.FileOf(events)));
}
