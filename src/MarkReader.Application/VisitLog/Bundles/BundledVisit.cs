using MarkReader.Application.Practising;
using MarkReader.Application.Records;

namespace MarkReader.Application.VisitLog.Bundles;

/// <summary>A visit as a file holds it, checked.</summary>
/// <param name="Origin">What it is called in every installation that has a copy, 32 hexadecimal digits.</param>
/// <param name="Machine">The machine's document when it began (JSON).</param>
/// <param name="All">All events in their order, with those that were taken back.</param>
/// <param name="Photos">Those that the events refer to.</param>
public sealed record BundledVisit(string Origin, string MachineName, string Note, string DoneBy, long Version, DateTimeOffset BegunAt, DateTimeOffset ChangedAt, string Machine, IReadOnlyList<KeptEvent> All, IReadOnlyList<BundledPhoto> Photos)
{
    /// <summary>Null when its machine is a real one.</summary>
    public PracticeRequest? Practice { get; init; }

    /// <summary>The visit as if it were kept.</summary>
    public KeptVisit Visit => new(new(0, null, MachineName, Note, Version, BegunAt, ChangedAt, DoneBy, Practice is not null), Machine, All) { Practice = Practice };

    /// <summary>What a record of it is made from.</summary>
    public RecordSource Source => RecordSource.Of(Visit) with { Number = null };
}

/// <summary>A photo of a visit in a file.</summary>
/// <param name="Id">SHA-256 of its bytes.</param>
/// <param name="Measurement">What was measured in it last; null when nothing was, or in a form that is not known.</param>
public sealed record BundledPhoto(string Id, BundledMeasurement? Measurement);

/// <summary>What was measured in a photo.</summary>
/// <param name="ProgramVersion">The version of the program that measured.</param>
/// <param name="Report">The report (JSON).</param>
public sealed record BundledMeasurement(string ProgramVersion, string Report);
