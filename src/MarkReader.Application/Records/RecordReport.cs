using System.Text;
using System.Text.Json;
using MarkReader.Application.Reports;
using MarkReader.Quantities;

namespace MarkReader.Application.Records;

/// <summary>A record as JSON: mm, mrad, mm²; uncertainties as covariances; times in UTC.</summary>
/// <param name="Format">"markreader-record".</param>
/// <param name="Version">Of the format; fields may be added within a version.</param>
/// <param name="Program">The version of the program that made it.</param>
/// <param name="Machine">The machine's document.</param>
/// <param name="Steps">Each quantity that has a tolerance, as found and as left.</param>
/// <param name="Advice">As advise prints it at the end of the visit, with the verdict of the whole under state.machine.</param>
/// <param name="Events">All, with those that were taken back.</param>
/// <param name="Budgets">Where the uncertainties come from.</param>
/// <param name="Photos">SHA-256 of the originals.</param>
public sealed record RecordReport(
    string Format,
    int Version,
    string Program,
    RecordVisitReport Visit,
    JsonElement Machine,
    IReadOnlyList<RecordStepReport> Steps,
    VisitReport Advice,
    IReadOnlyList<RecordEventReport> Events,
    IReadOnlyList<RecordBudgetReport> Budgets,
    IReadOnlyList<RecordPhotoReport> Photos)
{
    public static byte[] Write(VisitRecord record) => Encoding.UTF8.GetBytes(ReportJson.Write(From(record)));

    public static RecordReport From(VisitRecord record) => new(
        "markreader-record",
        1,
        record.ProgramVersion,
        new(record.Source.Number, record.MachineName, record.Source.DoneBy, record.Source.Note, record.Source.BegunAt?.UtcDateTime, record.EndedAt?.UtcDateTime, record.MadeAt.UtcDateTime),
        Json(record.Source.Machine),
        [.. record.Steps.Select(RecordStepReport.From)],
        VisitReport.From(record.Advice),
        [.. record.Events.Select(e => new RecordEventReport(
            e.Number, e.Source.At?.UtcDateTime, e.Source.TakenBackAt?.UtcDateTime, Json(e.Source.Text), e.Mark, e.Mark is { } mark ? record.Marks.First(m => m.Number == mark).Diameter : null, e.Photo))],
        [.. record.Budgets.Select(b => new RecordBudgetReport(b.Leg is null ? "marks" : "aim", b.Leg, b.Moment is { } moment ? SurveyReport.Name(moment) : null, b.Points, ComponentReport.From(b.Components)))],
        [.. record.Photos.Select(p => new RecordPhotoReport(p.Number, p.Id))]);

    private static JsonElement Json(string text)
    {
        using JsonDocument document = JsonDocument.Parse(text, new() { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true });
        return document.RootElement.Clone();
    }
}

/// <summary>Whose visit it was, and when.</summary>
/// <param name="Number">Null when the visit is not kept.</param>
/// <param name="EndedAt">When the last event came in.</param>
public sealed record RecordVisitReport(long? Number, string MachineName, string DoneBy, string Note, DateTime? BegunAt, DateTime? EndedAt, DateTime RecordMadeAt);

/// <summary>A quantity that has a tolerance.</summary>
/// <param name="Quantity">legSpread, bedSpread, centring.</param>
/// <param name="Tolerance">Its largest size, mm.</param>
/// <param name="Found">Before the first change; null when it was not measured before.</param>
/// <param name="Skipped">Why the step was skipped; null when it was not.</param>
public sealed record RecordStepReport(string Quantity, string? Leg, double Tolerance, RecordStateReport? Found, RecordStateReport Left, string? Skipped)
{
    internal static RecordStepReport From(RecordStep step) => new(
        SurveyReport.Name(step.Quantity), step.Leg, step.Tolerance.Millimetres, step.Found is { } found ? RecordStateReport.From(found) : null, RecordStateReport.From(step.Left), step.Skipped);
}

/// <summary>What was known of it.</summary>
/// <param name="Verdict">within, outside, undecided.</param>
/// <param name="Probability">Lower bound of the conformance probability.</param>
/// <param name="Size">What the tolerance limits, mm; null until it is measured.</param>
/// <param name="Expanded">Half-length of the 95 % region in the direction of the value, mm.</param>
/// <param name="Value">The value whose length is the size, mm.</param>
/// <param name="Slope">Of a leg, mrad.</param>
/// <param name="Aim">Of a leg, mm.</param>
public sealed record RecordStateReport(string Verdict, double Probability, double? Size, double? Expanded, VisitAimReport? Value, SlopeReport? Slope, VisitAimReport? Aim)
{
    internal static RecordStateReport From(RecordState state) => new(
        SurveyReport.Name(state.Conformity.Verdict),
        state.Conformity.Probability,
        state.Value?.Vector.Magnitude,
        state.Expanded,
        state.Value is { } v ? new(v.Vector.U, v.Vector.V, MarkReport.Matrix(v.Covariance)) : null,
        state.Slope is { } s ? new(s.U, s.V, MarkReport.Matrix(s.Covariance)) : null,
        state.Aim is { } aim ? Point(aim) : null);

    private static VisitAimReport Point(MeasuredPoint p) => new(p.Point.U, p.Point.V, MarkReport.Matrix(p.Covariance));
}

/// <summary>An event.</summary>
/// <param name="At">When it came in; null when that is not known.</param>
/// <param name="TakenBackAt">Null: it counts.</param>
/// <param name="Event">As a visit file has it.</param>
/// <param name="Mark">Number of its mark among the marks of the visit, from 1.</param>
/// <param name="Diameter">Of its mark, mm; null when it was not measured in a photo.</param>
/// <param name="Photo">Number of its photo.</param>
public sealed record RecordEventReport(int Number, DateTime? At, DateTime? TakenBackAt, JsonElement Event, int? Mark, double? Diameter, int? Photo);

/// <summary>A budget.</summary>
/// <param name="Of">marks: the mean over the marks in photos; aim: a leg's aim point.</param>
/// <param name="Moment">Of an aim point: found, left.</param>
/// <param name="Points">How many marks it is from.</param>
public sealed record RecordBudgetReport(string Of, string? Leg, string? Moment, int Points, IReadOnlyList<ComponentReport> Components);

/// <summary>A photo.</summary>
/// <param name="Id">SHA-256 of the original.</param>
public sealed record RecordPhotoReport(int Number, string Id);
