using System.Globalization;
using MarkReader.Alignment.Aiming;
using MarkReader.Alignment.Legs;
using MarkReader.Alignment.Visits;
using MarkReader.Drawing.Pictures;
using MarkReader.Quantities;

namespace MarkReader.Application.Pictures;

/// <summary>A leg's target, and the uncertainty of its aim point.</summary>
internal static class LegPictures
{
    public static VisitPicture? Target(PictureSource source, VisitLeg leg)
    {
        LegSight sight = LegSight.Of(source, leg);
        if (sight.Marks.Count == 0)
            return null;
        VisitPictureWords words = source.Words;
        TargetPlan plan = new(
            VisitPictureWords.Fill(source.IsBefore ? words.TargetTitleBefore : words.TargetTitle, leg.Name),
            [.. sight.Marks.Select(m => new PlannedMark(m.Number, sight.Role(m), m.At, m.Counts))])
        {
            Aim = sight.Aim,
            Tolerance = Tolerance(leg),
            Expected = sight.Expected,
            Moving = sight.Moving?.At.Point,
            ToGo = sight.ToGo,
            AtFirst = sight.AtFirst,
            Style = source.Style.Style,
        };
        return new("target-" + leg.Name, Description(source, sight), plan);
    }

    /// <summary>What each source contributes to the aim point of the last marks at two stations between which nothing was changed; null without any. No turn moves the aim point.</summary>
    public static VisitPicture? Budget(PictureSource source, VisitLeg leg)
    {
        Observation[]? seen = source.Marks.Legs[leg.Name].Where(m => m.IsOfThisRound).GroupBy(m => m.Changes)
            .Select(beam => beam.Select(m => new Observation(new(Length.FromMillimetres(m.Path), leg.Setup.Near.PathUncertainty), m.At)).ToArray())
            .LastOrDefault(beam => beam.DistinctBy(o => o.Station.Path).Count() > 1);
        if (seen is null || !AimSolver.Solve(leg.Setup.Leg, seen).TryGet(out AimSolution? solution, out _))
            return null;
        Covariance2 whole = solution.Aim.Covariance;
        VisitPictureWords words = source.Words;
        UncertaintyBar[] bars =
        [
            .. solution.Budget.Select(c => new UncertaintyBar(words.Source(c.Source), Uncertainty(c.Covariance), (c.Covariance.Uu + c.Covariance.Vv) / (whole.Uu + whole.Vv)))
                .OrderByDescending(b => b.Share),
        ];
        PictureNumbers numbers = source.Style.Style.Numbers;
        string[] sentences =
        [
            VisitPictureWords.Fill(words.Budget, leg.Name, numbers.Fine(Uncertainty(whole))),
            .. bars.Select(b => VisitPictureWords.Fill(words.BudgetPart, b.Name, numbers.Fine(b.Uncertainty), numbers.Number(Percentage.Rounded(b.Share)))),
        ];
        return new("budget-" + leg.Name, string.Join(' ', sentences), new UncertaintyBars(VisitPictureWords.Fill(words.BudgetTitle, leg.Name), bars, Uncertainty(whole)) { Style = source.Style.Style });
    }

    // The root of the mean variance of both directions.
    private static Length Uncertainty(Covariance2 c) => Length.FromMillimetres(Math.Sqrt((c.Uu + c.Vv) / 2));

    // The slope's tolerance, carried from the pivot to the far mark and onto the tape.
    private static Ellipse Tolerance(VisitLeg leg)
    {
        (double near, double far) = (leg.Setup.Near.Path.Millimetres, leg.Setup.Far.Path.Millimetres);
        double radius = leg.Setup.Tolerance.Millimetres * (far + leg.Setup.Leg.PivotOffset.Millimetres) / (far - near);
        return new(radius / Math.Cos(leg.Setup.Leg.Incidence.Radians), radius, Angle.Zero);
    }

    internal static PictureSentences Description(PictureSource source, LegSight sight)
    {
        VisitPictureWords words = source.Words;
        List<string> marks = [], sentences = [];
        foreach (LegMark mark in sight.Marks)
        {
            string station = sight.Role(mark) == MarkRole.Near ? words.Near : words.Far;
            marks.Add(VisitPictureWords.Fill(
                mark.Counts ? words.Mark : words.MarkEarlier, mark.Number.ToString(CultureInfo.InvariantCulture), station, source.Text(mark.At.Point.U), source.Text(mark.At.Point.V)));
        }

        if (sight.Aim is { } aim)
        {
            Ellipse region = aim.Covariance.Ellipse95();
            sentences.Add(VisitPictureWords.Fill(words.Aim, source.Text(aim.Point.U), source.Text(aim.Point.V), source.Text(region.SemiMajor), source.Text(region.SemiMinor)));
        }

        foreach (MeasuredPoint expected in sight.Expected)
            sentences.Add(VisitPictureWords.Fill(sight.Expected.Count > 1 ? words.ExpectedOneOf : words.Expected, source.Text(expected.Point.U), source.Text(expected.Point.V)));
        PictureNumbers numbers = source.Style.Style.Numbers;
        if (sight.ToGo is { } toGo)
            sentences.Add(sight.AtFirst is { } first ? VisitPictureWords.Fill(words.ToGoAtFirst, numbers.Measured(toGo), numbers.Measured(first)) : VisitPictureWords.Fill(words.ToGo, numbers.Measured(toGo)));
        return new(marks, sentences);
    }
}
