using MarkReader.Alignment.Aiming;
using MarkReader.Alignment.Verdicts;
using MarkReader.Alignment.Visits;
using MarkReader.Quantities;

namespace MarkReader.Application.Records;

/// <summary>The record of a visit: what was found, what was done, what was left, and how sure it is. <see cref="RecordMaker"/> makes it.</summary>
/// <param name="Source">The visit.</param>
/// <param name="MachineName">Empty when the machine has none.</param>
/// <param name="Setup">The machine as it was read.</param>
/// <param name="Advice">At the end of the visit, with the verdict of the whole.</param>
/// <param name="Steps">As found and as left, in the order of the work.</param>
/// <param name="Events">All, in their order.</param>
/// <param name="Marks">Of all pulses, also of those that were taken back.</param>
/// <param name="Budgets">Where the uncertainties come from.</param>
/// <param name="Photos">In the order of their marks.</param>
/// <param name="PhotosMissing">Photos that the visit names and that could not be had.</param>
/// <param name="MadeAt">When the record was made.</param>
/// <param name="ProgramVersion">The version of the program that made it.</param>
public sealed record VisitRecord(
    RecordSource Source,
    string MachineName,
    VisitSetup Setup,
    VisitAdvice Advice,
    IReadOnlyList<RecordStep> Steps,
    IReadOnlyList<RecordEvent> Events,
    IReadOnlyList<RecordMark> Marks,
    IReadOnlyList<RecordBudget> Budgets,
    IReadOnlyList<RecordPhoto> Photos,
    int PhotosMissing,
    DateTimeOffset MadeAt,
    string ProgramVersion)
{
    public Conformity Verdict => Advice.State.Machine;

    /// <summary>When the last event came in; when it began, without events; null when neither is known.</summary>
    public DateTimeOffset? EndedAt => Events.Select(e => e.Source.At).Concat(Events.Select(e => e.Source.TakenBackAt)).Append(Source.BegunAt).Max();
}

/// <summary>What a step's tolerance is about.</summary>
public enum RecordQuantity
{
    /// <summary>The walk of the mark over a leg's travel.</summary>
    LegSpread,

    /// <summary>The greatest distance of two marks over the bed.</summary>
    BedSpread,

    /// <summary>The steady mark from the aperture's centre.</summary>
    Centring,
}

/// <summary>The two moments that a record compares.</summary>
public enum RecordMoment
{
    /// <summary>Before the first change.</summary>
    Found,

    /// <summary>At the end.</summary>
    Left,
}

/// <summary>A step of the job as found and as left.</summary>
/// <param name="Leg">The leg's name; null for bed and aperture.</param>
/// <param name="Found">Before the first change to it; null when it was not measured before.</param>
/// <param name="Skipped">Why the step was skipped; null when it was not.</param>
public sealed record RecordStep(RecordQuantity Quantity, string? Leg, Length Tolerance, RecordState? Found, RecordState Left, string? Skipped);

/// <summary>What was known of a step.</summary>
/// <param name="Value">Its length is what the tolerance limits, mm; null until it is measured.</param>
/// <param name="Slope">Of a leg, mrad.</param>
/// <param name="Aim">Of a leg, on the target, mm.</param>
public sealed record RecordState(Conformity Conformity, MeasuredVector? Value, Slope? Slope, MeasuredPoint? Aim)
{
    /// <summary>Half-length of the 95 % region in the direction of the value, mm.</summary>
    public double? Expanded => Value is { } v ? DecisionRule.RegionFactor * Along(v) : null;

    // Of a vector without direction: in the worst one.
    private static double Along(MeasuredVector v)
    {
        (double u, double w, Covariance2 c) = (v.Vector.U, v.Vector.V, v.Covariance);
        double square = (u * u) + (w * w);
        return square > 0 ? Math.Sqrt(((u * u * c.Uu) + (2 * u * w * c.Uv) + (w * w * c.Vv)) / square) : c.Ellipse(1).SemiMajor;
    }
}

/// <summary>An event with what the record says of it.</summary>
/// <param name="Number">Counts all events from 1.</param>
/// <param name="Event">As it was read.</param>
/// <param name="Note">What was written beside it; may be empty.</param>
/// <param name="Mark">Number of its mark; null when it made none.</param>
/// <param name="Photo">Number of its photo; null without one.</param>
public sealed record RecordEvent(int Number, RecordSourceEvent Source, VisitEvent Event, string Note, int? Mark, int? Photo)
{
    public bool IsTakenBack => Source.TakenBackAt is not null;
}

/// <summary>A mark.</summary>
/// <param name="Number">Counts the marks from 1.</param>
/// <param name="Of">The event that it belongs to.</param>
/// <param name="At">Its place on the target's card, with its covariance.</param>
/// <param name="Diameter">mm; null when it was not measured in a photo.</param>
/// <param name="Photo">Number of its photo; null without one.</param>
public sealed record RecordMark(int Number, RecordEvent Of, MeasuredPoint At, double? Diameter, int? Photo);

/// <summary>A budget: what each source contributes to a covariance.</summary>
/// <param name="Leg">Of this leg's aim point; null: of the marks in photos.</param>
/// <param name="Moment">When the aim point was there; null of the marks in photos.</param>
/// <param name="Points">How many marks it is the mean over, or was worked out from.</param>
public sealed record RecordBudget(string? Leg, RecordMoment? Moment, int Points, IReadOnlyList<UncertaintyComponent> Components);

/// <summary>A photo, made small.</summary>
/// <param name="Number">Counts the photos from 1.</param>
/// <param name="Id">SHA-256 of the original.</param>
/// <param name="Jpeg">The small photo, without EXIF.</param>
/// <param name="IsCut">Whether it shows a part of the original only.</param>
public sealed record RecordPhoto(int Number, string Id, byte[] Jpeg, PhotoSize Size, bool IsCut);
