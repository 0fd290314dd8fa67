using System.Globalization;
using MarkReader.Alignment.History;
using MarkReader.Alignment.Verdicts;
using MarkReader.Application.History;

namespace MarkReader.Service.Api.Answers;

/// <summary>The history of a machine.</summary>
/// <param name="Machine">The machine's number.</param>
/// <param name="Name">Its name.</param>
/// <param name="Reminder">When the next visit is due; null when none is asked for.</param>
/// <param name="Visits">The visits, oldest first.</param>
/// <param name="Unread">Visits that could not be used.</param>
/// <param name="IsCut">Whether older visits were left out.</param>
/// <param name="Quantities">What was measured at them.</param>
internal sealed record HistoryAnswer(
    long Machine, string Name, ReminderAnswer? Reminder, IReadOnlyList<HistoryVisitAnswer> Visits, int Unread, bool IsCut, IReadOnlyList<QuantityAnswer> Quantities)
{
    public static HistoryAnswer From(MachineHistory history, HistoryWords words, DateTimeOffset now) => new(
        history.Machine.Id,
        history.Machine.Name,
        history.Reminder is { } r ? new(r.Days, r.DueAt, r.IsOverdue(now)) : null,
        [.. history.Visits.Select(v => new HistoryVisitAnswer(v.Id, v.At, v.Verdict, VisitAnswer.Address(v.Id)))],
        history.Unread,
        history.IsCut,
        [.. history.Quantities.Select(q => QuantityAnswer.From(history.Machine.Id, q, words))]);

    /// <summary>The address of a chart, without its ending.</summary>
    public static string Chart(long machine, HistoryQuantity quantity) => string.Create(CultureInfo.InvariantCulture, $"{MachineAnswer.Address(machine)}/history/{quantity.Name}");
}

/// <summary>When the next visit is due.</summary>
/// <param name="Days">Days from one visit to the next.</param>
internal sealed record ReminderAnswer(double Days, DateTimeOffset DueAt, bool IsOverdue);

/// <summary>A visit in a machine's history.</summary>
/// <param name="At">When it began.</param>
/// <param name="Verdict">On the machine at its end.</param>
/// <param name="Address">Of the visit.</param>
internal sealed record HistoryVisitAnswer(long Id, DateTimeOffset At, Verdict Verdict, string Address);

/// <summary>A quantity over the visits.</summary>
/// <param name="Name">slope-1, slope-2, slope-3, spread or centring.</param>
/// <param name="Unit">mrad or mm.</param>
/// <param name="Sentence">What it shows, in the browser's unit of length.</param>
/// <param name="Verdict">Null for the spread, which is shown only.</param>
/// <param name="Changes">How many changes between visits were tested.</param>
/// <param name="Probability">That a steady quantity shows as much or more; null without a verdict.</param>
/// <param name="Rate">A month, with its 95 % interval.</param>
/// <param name="Jump">The change that stands out most.</param>
/// <param name="Tolerance">Of the length of its values.</param>
/// <param name="Points">Oldest first.</param>
/// <param name="Svg">Address of the chart.</param>
/// <param name="Png">Address of the same as a PNG.</param>
internal sealed record QuantityAnswer(
    string Name, string Unit, string Sentence, HistoryVerdict? Verdict, int Changes, double? Probability, HistorySize? Rate, JumpAnswer? Jump, double Tolerance, IReadOnlyList<PointAnswer> Points, string Svg, string Png)
{
    public static QuantityAnswer From(long machine, QuantityHistory history, HistoryWords words)
    {
        HistoryFinding? finding = history.Finding;
        string chart = HistoryAnswer.Chart(machine, history.Quantity);
        JumpAnswer? jump = finding is { JumpAt: { } at, Jump: { } size } ? new(history.Changes[at].From, history.Changes[at].To, size) : null;
        return new(
            history.Quantity.Name,
            history.Quantity.IsLength ? "mm" : "mrad",
            words.Sentence(history),
            finding?.Verdict,
            history.Changes.Count,
            finding?.Probability,
            finding?.Rate,
            jump,
            history.Tolerance,
            [.. history.Points.Select(p => new PointAnswer(p.Visit, p.At, StateAnswer.From(p.State.Found), StateAnswer.From(p.State.Left), p.State.IsChanged))],
            chart + ".svg",
            chart + ".png");
    }
}

/// <summary>A change between two visits.</summary>
internal sealed record JumpAnswer(DateTimeOffset From, DateTimeOffset To, HistorySize Size);

/// <summary>A quantity at a visit.</summary>
/// <param name="Visit">The visit's number.</param>
/// <param name="Found">Before anything was changed; null when it was not measured then.</param>
/// <param name="Left">At the end, measured after the last change; null when it was not.</param>
/// <param name="IsChanged">Whether anything was changed that it depends on.</param>
internal sealed record PointAnswer(long Visit, DateTimeOffset At, StateAnswer? Found, StateAnswer? Left, bool IsChanged);

/// <summary>A value of two components with its covariance: uu, uv, vv.</summary>
internal sealed record StateAnswer(double U, double V, IReadOnlyList<double> Covariance)
{
    public static StateAnswer? From(HistoryValue? value) => value is null ? null : new(value.U, value.V, [value.Covariance.Uu, value.Covariance.Uv, value.Covariance.Vv]);
}
