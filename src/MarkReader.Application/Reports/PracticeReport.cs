using System.Text.Json.Serialization;
using MarkReader.Alignment.Visits;
using MarkReader.Application.Practising;
using MarkReader.Quantities;

namespace MarkReader.Application.Reports;

/// <summary>The JSON of a practice visit.</summary>
/// <param name="Steps">What was done.</param>
/// <param name="End">The last advice.</param>
/// <param name="Refused">Why the last action could not be carried out; null otherwise.</param>
/// <param name="Pulses">On the legs and at the head, all together; likewise turns.</param>
/// <param name="TrueSpread">The true spread of the marks over the bed before and after; null where the beam is lost.</param>
public sealed record PracticeReport(
    int Seed, IReadOnlyList<PracticeStepReport> Steps, VisitReport End, ErrorBody? Refused, int Pulses, int Turns, PracticeTruthReport TrueSpread)
{
    public static PracticeReport From(int seed, PracticeSession session, PracticeEnd end)
    {
        IReadOnlyList<PracticeStep> steps = session.Steps;
        return new(
            seed,
            [.. steps.Select(PracticeStepReport.From)],
            VisitReport.From(end.Last),
            end.Refused is { } refused ? ErrorReport.From(refused).Error : null,
            steps.Count(s => s.Mark is not null),
            steps.Count(s => s.Action is VisitAction.Turn),
            new(session.TrueSpread(before: true)?.Millimetres, session.TrueSpread()?.Millimetres));
    }
}

/// <summary>One step and the mark that it left.</summary>
public sealed record PracticeStepReport(
    VisitActionReport Action,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] PracticeMarkReport? Mark)
{
    internal static PracticeStepReport From(PracticeStep step) => new(
        VisitActionReport.From(step.Action),
        step.Mark is { Mark: MeasuredPoint at } mark ? new(at.Point.U, at.Point.V, MarkReport.Matrix(at.Covariance), mark.Photo) : null);
}

/// <summary>A mark in the card frame, mm and mm², and the photo that it was measured in.</summary>
public sealed record PracticeMarkReport(
    double U, double V, double[][] Covariance, [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] string? Photo);

/// <summary>mm; null where the beam is lost.</summary>
public sealed record PracticeTruthReport(double? Before, double? After);
