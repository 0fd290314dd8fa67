using System.Globalization;
using System.Text.Json;
using MarkReader.Alignment.Visits;
using MarkReader.Application.Reports;
using MarkReader.Application.VisitLog;
using MarkReader.Quantities;

namespace MarkReader.Service.Api.Answers;

/// <summary>A visit that is kept.</summary>
/// <param name="Id">Its number.</param>
/// <param name="MachineId">Number of the machine that it was begun with; null when that is no longer kept.</param>
/// <param name="MachineName">The machine's name when the visit began.</param>
/// <param name="Note">As given; may be empty.</param>
/// <param name="Version">Counts events that were added or taken back; the ETag.</param>
/// <param name="BegunAt">When it began.</param>
/// <param name="ChangedAt">When its version last changed.</param>
/// <param name="Machine">The machine's document when the visit began.</param>
/// <param name="Events">The events that count, in their order.</param>
/// <param name="TakenBack">Events that were taken back.</param>
/// <param name="Advice">What to do next; null when this version of the program cannot use the visit.</param>
/// <param name="Refusal">Why there is no advice.</param>
/// <param name="File">Address of the visit file, which advise reads.</param>
/// <param name="DoneBy">Who does the work; may be empty.</param>
/// <param name="IsPractice">Whether the machine exists only in this program; then pulses can be fired on it at /pulses.</param>
internal sealed record VisitAnswer(
    long Id,
    long? MachineId,
    string MachineName,
    string Note,
    long Version,
    DateTimeOffset BegunAt,
    DateTimeOffset ChangedAt,
    JsonElement Machine,
    IReadOnlyList<EventAnswer> Events,
    IReadOnlyList<EventAnswer> TakenBack,
    VisitReport? Advice,
    RefusalAnswer? Refusal,
    string File,
    string DoneBy,
    bool IsPractice)
{
    public static VisitAnswer From(KeptVisit visit)
    {
        VisitEntry entry = visit.Entry;
        bool advised = VisitDesk.Advise(visit).TryGet(out VisitAdvice? advice, out Failure? failure);
        return new(
            entry.Id,
            entry.MachineId,
            entry.MachineName,
            entry.Note,
            entry.Version,
            entry.BegunAt,
            entry.ChangedAt,
            JsonSerializer.Deserialize<JsonElement>(visit.Machine),
            [.. visit.Events.Select(EventAnswer.From)],
            [.. visit.All.Where(e => e.TakenBack is not null).Select(EventAnswer.From)],
            advised ? VisitReport.From(advice!) : null,
            advised ? null : new(failure!.Code.Name, failure.Message, failure.Hint),
            Address(entry.Id) + "/file",
            entry.DoneBy,
            entry.IsPractice);
    }

    public static string Address(long id) => string.Create(CultureInfo.InvariantCulture, $"/api/visits/{id}");
}

/// <summary>An event of a visit.</summary>
/// <param name="Number">Counts up in its visit.</param>
/// <param name="Event">As a visit file has it.</param>
/// <param name="AddedAt">When it came in.</param>
/// <param name="TakenBackAt">When it was taken back; null: it counts.</param>
internal sealed record EventAnswer(int Number, JsonElement Event, DateTimeOffset AddedAt, DateTimeOffset? TakenBackAt)
{
    public static EventAnswer From(KeptEvent kept) => new(kept.Number, JsonSerializer.Deserialize<JsonElement>(kept.Text), kept.AddedAt, kept.TakenBack?.At);
}

/// <summary>An event that was added.</summary>
/// <param name="Number">Counts up in its visit.</param>
/// <param name="Version">The visit's version that it made; the ETag.</param>
/// <param name="Event">As it is kept: a photo's mark with its u, v and covariance.</param>
/// <param name="AddedAt">When it came in.</param>
/// <param name="Advice">What to do next, as it was at that version.</param>
/// <param name="Warnings">Fields of this event that are not known and were not used.</param>
internal sealed record StepAnswer(int Number, long Version, JsonElement Event, DateTimeOffset AddedAt, VisitReport Advice, IReadOnlyList<WarningReport> Warnings)
{
    public static StepAnswer From(VisitAddition step) => new(
        step.Event.Number, step.Event.AddedVersion, JsonSerializer.Deserialize<JsonElement>(step.Event.Text), step.Event.AddedAt, VisitReport.From(step.Advice), WarningReport.From(step.Ignored));
}

/// <summary>What begins a visit. It describes the interface; the text itself is read by <see cref="VisitBeginning"/>.</summary>
/// <param name="Machine">Number of a machine that is kept; the visit gets a copy of its document. Left out for a practice machine.</param>
/// <param name="Note">At most 500 signs.</param>
/// <param name="DoneBy">Who does the work, at most 80 signs.</param>
/// <param name="Practice">The practice machine, in place of one that is kept.</param>
internal sealed record VisitToBegin(long? Machine, string? Note, string? DoneBy, PracticeToBegin? Practice);

/// <summary>A practice machine: one seed, one machine. What is left out is as usual.</summary>
/// <param name="Seed">0 to 999999.</param>
/// <param name="Slope">Largest slope in each leg on each axis, mrad, at most 10.</param>
/// <param name="Twist">Largest height of one corner of the frame, mm, at most 3.</param>
/// <param name="Bend">Bend of both rails, mm, at most 1.</param>
/// <param name="Mark">Scatter from pulse to pulse, mm.</param>
/// <param name="Tolerance">mm.</param>
internal sealed record PracticeToBegin(int Seed, double? Slope, double? Twist, double? Bend, double? Mark, double? Tolerance);

/// <summary>What of a visit can be changed besides its events.</summary>
/// <param name="Note">At most 500 signs.</param>
/// <param name="DoneBy">Who does the work, at most 80 signs.</param>
internal sealed record VisitWordsToChange(string Note, string DoneBy);

/// <summary>A page of visits, newest first.</summary>
/// <param name="Visits">The visits, without machines and events.</param>
/// <param name="Next">Address of the next page, or null.</param>
internal sealed record VisitList(IReadOnlyList<VisitEntry> Visits, string? Next);
