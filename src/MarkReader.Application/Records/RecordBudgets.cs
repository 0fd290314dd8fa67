using MarkReader.Alignment.Aiming;
using MarkReader.Alignment.Legs;
using MarkReader.Alignment.Visits;
using MarkReader.Application.Advising;
using MarkReader.Application.Reports;
using MarkReader.Quantities;

namespace MarkReader.Application.Records;

/// <summary>The budgets of a record: the mean over the marks in photos, and each leg's aim point as found and as left.</summary>
internal static class RecordBudgets
{
    // Part of the variance.
    private const double Rounding = 1e-3;

    public static IReadOnlyList<RecordBudget> Of(Visit visit, FoundStates found, VisitAdvice end, IReadOnlyList<(RecordMark Mark, MarkReport? Report)> marks)
    {
        List<RecordBudget> budgets = [];
        IReadOnlyList<UncertaintyComponent>[] read = [.. marks.Where(m => !m.Mark.Of.IsTakenBack).Select(m => ComponentReport.Read(m.Report?.Budget)).OfType<IReadOnlyList<UncertaintyComponent>>()];
        if (read.Length > 0)
        {
            budgets.Add(new(null, null, read.Length, [.. read.SelectMany(b => b).GroupBy(c => c.Source).OrderBy(g => g.Key)
                .Select(g => new UncertaintyComponent(g.Key, 1.0 / read.Length * g.Select(c => c.Covariance).Aggregate((a, b) => a + b)))]));
        }

        Dictionary<VisitEvent, MarkReport?> reports = new(ReferenceEqualityComparer.Instance);
        foreach (((RecordMark mark, MarkReport? report), VisitEvent e) in marks.Where(m => !m.Mark.Of.IsTakenBack).Zip(visit.Events.Where(e => e is VisitEvent.Mark or VisitEvent.Survey)))
            reports.Add(e, mark.Of.IsTakenBack ? null : report);
        Dictionary<int, MarkReport?> numbered = marks.ToDictionary(m => m.Mark.Number, m => m.Report);
        VisitMarks made = VisitMarks.Of(visit.Setup, visit.Events);
        foreach (VisitLeg leg in visit.Setup.Legs)
        {
            if (found.Found(leg) is { } count && Aim(leg, [.. visit.Events.Take(count)], reports) is { } aim)
                budgets.Add(aim);
            if (end.State.Legs[leg.Name].State.Aim is { } last && Left(leg, made.Legs[leg.Name], numbered, last) is { } left)
                budgets.Add(left);
        }

        return budgets;
    }

    // The last marks at two stations between which nothing was changed, and what the turns since then have added.
    private static RecordBudget? Left(VisitLeg leg, IReadOnlyList<LegMark> made, Dictionary<int, MarkReport?> reports, MeasuredPoint last)
    {
        LegMark[]? beam = made.Where(m => m.IsOfThisRound).GroupBy(m => m.Changes).Select(g => g.ToArray()).LastOrDefault(g => g.DistinctBy(m => m.Path).Count() > 1);
        if (beam is null)
            return null;
        Observation[] observations = [.. beam.Select(m => Observed(leg, m.Path, m.At, reports.GetValueOrDefault(m.Number)))];
        if (!AimSolver.Solve(leg.Setup.Leg, observations).TryGet(out AimSolution? aim, out _))
            return null;
        Covariance2 then = aim.Aim.Covariance, now = last.Covariance;
        Covariance2 since = new(Math.Max(0, now.Uu - then.Uu), 0, Math.Max(0, now.Vv - then.Vv));
        bool turned = !beam[0].Counts && since.Uu + since.Vv > Rounding * (now.Uu + now.Vv);
        return new(leg.Name, RecordMoment.Left, beam.Length, turned ? [.. aim.Budget, new(UncertaintySource.ScrewTurns, since)] : aim.Budget);
    }

    private static Observation Observed(VisitLeg leg, double path, MeasuredPoint at, MarkReport? report) =>
        new(new Station(Length.FromMillimetres(path), leg.Setup.Near.PathUncertainty), at.Point, Errors(at.Covariance, ComponentReport.Read(report?.Budget)));

    private static RecordBudget? Aim(VisitLeg leg, IReadOnlyList<VisitEvent> events, Dictionary<VisitEvent, MarkReport?> reports)
    {
        // Only marks of one state of the machine lie on one line.
        int from = 1 + events.ToList().FindLastIndex(e => e is not (VisitEvent.Mark or VisitEvent.Survey));
        VisitEvent.Mark[] marks = [.. events.Skip(from).OfType<VisitEvent.Mark>().Where(m => m.Leg == leg.Name)];
        Observation[] observations = [.. marks.Select(m => Observed(leg, m.Path, m.At, reports.GetValueOrDefault(m)))];
        if (observations.Select(o => o.Station.Path).Distinct().Count() < 2 || !AimSolver.Solve(leg.Setup.Leg, observations).TryGet(out AimSolution? aim, out _))
            return null;
        return new(leg.Name, RecordMoment.Found, observations.Length, aim.Budget);
    }

    // The photo's parts; what the mark's covariance has beyond them is the scatter of the pulses and counts as noise.
    private static MarkErrors Errors(Covariance2 whole, IReadOnlyList<UncertaintyComponent>? parts)
    {
        if (parts is null)
            return MarkErrors.Undivided(whole);
        Covariance2 sum = parts.Select(p => p.Covariance).Aggregate((a, b) => a + b);
        (double u, double v) = (whole.Uu - sum.Uu, whole.Vv - sum.Vv);
        return u >= -1e-12 && v >= -1e-12 ? new([new(UncertaintySource.Noise, new(Math.Max(0, u), 0, Math.Max(0, v))), .. parts], []) : MarkErrors.Undivided(whole);
    }
}
