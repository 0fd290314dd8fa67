using System.Text.Json;
using MarkReader.Alignment.Visits;
using MarkReader.Application.Advising;
using MarkReader.Application.Reports;
using MarkReader.Application.Storage;
using MarkReader.Quantities;

namespace MarkReader.Application.VisitLog;

/// <summary>Which of the marks in a photo is the one that was just burnt.</summary>
/// <param name="Measurement">What was measured in the photo.</param>
/// <param name="Marks">Its marks in their order.</param>
/// <param name="Preferred">Number of the likeliest one.</param>
/// <param name="IsUsed">Whether this very photo has given a mark to the visit already.</param>
public sealed record MarkCandidates(MeasureReport Measurement, IReadOnlyList<MarkCandidate> Marks, int Preferred, bool IsUsed)
{
    // Two photos of one mark agree better than this, mm; two pulses hit one place rarely.
    private const double Same = 0.15;

    /// <param name="advice">The visit's advice, which asks for a pulse.</param>
    /// <returns>The photo's own refusal when it could not be measured.</returns>
    public static Outcome<MarkCandidates> Of(PhotoStore photos, KeptVisit visit, VisitAdvice advice, string photo)
    {
        if (!photos.FindMeasurement(photo).TryGet(out KeptMeasurement? kept, out Failure? failure))
            return failure;
        if (kept.Answer is not KeptAnswer.Report report)
            return ((KeptAnswer.Refusal)kept.Answer).Failure;
        MeasureReport measured = JsonSerializer.Deserialize<MeasureReport>(report.Json, ReportJson.Options)!;
        if (!AdviseVisit.Read(visit).TryGet(out Visit? read, out failure))
            return failure;
        CardPoint[] known = [.. read.Events.Select(e => Known(e, advice.Action)).OfType<CardPoint>()];
        // A lone mark is the fresh one: on an aligned machine it falls where others fell before.
        bool several = measured.Marks.Count > 1;
        MarkCandidate[] marks = [.. measured.Marks.Select((m, i) => new MarkCandidate(i, m, several && known.Any(k => k.DistanceTo(new(m.U, m.V)) <= Same)))];
        return new MarkCandidates(measured, marks, Prefer(marks, advice.Expected), visit.Events.Any(e => e.Photo == photo));
    }

    // On one tape lie the marks of one target: of the leg, or of the head.
    private static CardPoint? Known(VisitEvent e, VisitAction pulse) => (e, pulse) switch
    {
        (VisitEvent.Mark mark, VisitAction.Fire fire) when mark.Leg == fire.Leg => mark.At.Point,
        (VisitEvent.Survey survey, VisitAction.Survey) => survey.Seen.Mark.Point,
        _ => null,
    };

    private static int Prefer(MarkCandidate[] marks, ExpectedPlace? expected) => marks
        .OrderBy(m => m.IsKnown)
        .ThenBy(m => expected is null ? -m.Mark.Diameter : expected.Mark.Point.DistanceTo(new(m.Mark.U, m.Mark.V)))
        .First().Number;
}

/// <summary>A mark in a photo.</summary>
/// <param name="Number">Its number in the photo, from 0.</param>
/// <param name="IsKnown">Whether the visit has a mark of the same target at this place already.</param>
public sealed record MarkCandidate(int Number, MarkReport Mark, bool IsKnown);
