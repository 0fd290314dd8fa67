using System.Text.Json;
using MarkReader.Application.Cameras;
using MarkReader.Application.Reports;
using MarkReader.Cameras.CardChecks;
using MarkReader.Imaging.Boards;
using MarkReader.Quantities;

namespace MarkReader.Application.CardChecks;

/// <summary>The JSON of a check of a printed card: mm, px for residuals; it is kept as it is.</summary>
/// <param name="Verdict">good, notGood or cannotTell, of the card taken as drawn.</param>
/// <param name="SizeJudged">Whether the print's size is among what was judged: only with rulers that were read.</param>
/// <param name="Stretch">Relative excess of the scale along u over that along v.</param>
/// <param name="SkewMrad">By how much less than a right angle u and v enclose.</param>
/// <param name="Bend">Highest less lowest place of the card.</param>
/// <param name="PrintFault">Standard deviation of the printed edges' places.</param>
/// <param name="PrintPart">The worst error if the paper were flat.</param>
/// <param name="BendPart">The worst error if the print were as drawn.</param>
/// <param name="Corrected">With the rulers stated; null without.</param>
/// <param name="ShapesDiffer">Whether the photos show more than one shape; the figures are then those of no card.</param>
public sealed record CardCheckReport(
    string Camera,
    CheckedKindReport Card,
    double Limit,
    string Verdict,
    bool SizeJudged,
    CardErrorsReport AsDrawn,
    CardErrorsReport? Corrected,
    CardTermReport Stretch,
    CardTermReport SkewMrad,
    CardTermReport Bend,
    CardTermReport InkSpread,
    double PrintFault,
    double PrintPart,
    double BendPart,
    CheckedRulersReport? Rulers,
    IReadOnlyList<string> Advice,
    IReadOnlyList<CheckedViewReport> Views,
    IReadOnlyList<RefusedPhotoReport> Refused,
    double ResidualPx,
    bool ShapesDiffer = false)
{
    public static CardCheckReport Of(CardFinding f)
    {
        CheckedCard c = f.Card;
        return new(
            f.Camera,
            new(f.Kind.Name, f.Kind.OuterSide, f.Kind.ZoneSide, CardRulers.Nominal(f.Kind).U.Millimetres),
            f.Limit.Millimetres,
            Camel(f.Verdict),
            f.Rulers is not null,
            CardErrorsReport.Of(c.AsDrawn, f.Verdict),
            c.Corrected is { } corrected ? CardErrorsReport.Of(corrected, f.Corrected!.Value) : null,
            CardTermReport.Of(c.Stretch, 1),
            CardTermReport.Of(c.Skew, 1000),
            CardTermReport.Of(c.Bend, 1),
            CardTermReport.Of(c.InkSpread, 1),
            c.PrintFault,
            c.PrintPart.Millimetres,
            c.BendPart.Millimetres,
            RulersOf(f),
            [.. f.Advice.Select(a => Camel(a))],
            [
                .. c.Views.Select((v, i) => new CheckedViewReport(v.Name, c.Places[i].Tilt.Degrees, c.Places[i].Distance.Millimetres, v.Sightings, v.Used, v.ResidualPx, true, CheckedCard.Differs(v))),
                .. c.Dropped.Select(d => new CheckedViewReport(d.Name, null, null, null, null, d.ResidualPx, false, true)),
            ],
            [.. f.Refused.Select(r => new RefusedPhotoReport(r.Name, r.Failure.Code.Name, r.Failure.Message, r.Failure.Hint))],
            c.ResidualPx,
            f.ShapesDiffer);
    }

    private static CheckedRulersReport? RulersOf(CardFinding f)
    {
        if (f.Rulers is not { } read || f.Card is not { ScaleU: { } u, ScaleV: { } v, Rulers: { } check })
            return null;
        (Length nominalU, Length nominalV) = CardRulers.Nominal(f.Kind);
        return new(
            nominalU.Millimetres, nominalV.Millimetres, read.AlongU.Millimetres, read.AlongV.Millimetres, read.StandardUncertainty.Millimetres,
            u.Value * nominalU.Millimetres, v.Value * nominalV.Millimetres, u.StandardUncertainty * nominalU.Millimetres, check.Difference, check.StandardUncertainty, check.Agrees);
    }

    internal static string Camel<T>(T value)
        where T : struct, Enum => JsonNamingPolicy.CamelCase.ConvertName(value.ToString());
}

/// <summary>Which card it is.</summary>
public sealed record CheckedKindReport(string Kind, double Side, double ZoneSide, double RulerLength);

/// <summary>Errors of marks because of the card.</summary>
/// <param name="WorstAtLeast">The worst error is larger, with 95 % confidence.</param>
/// <param name="WorstAtMost">The worst error is smaller, with 95 % confidence.</param>
/// <param name="Zone">At each place the largest in a photo from straight above or tilted by 20° to any side; row by row from below.</param>
public sealed record CardErrorsReport(
    string Verdict, CardErrorReport Worst, double WorstStandardUncertainty, double WorstTiltDegrees, double WorstAtLeast, double WorstAtMost, double Rms, double RmsStandardUncertainty, IReadOnlyList<CardErrorReport> Zone)
{
    internal static CardErrorsReport Of(ErrorField f, CardVerdict verdict) => new(
        CardCheckReport.Camel(verdict), Place(f.Worst), f.Worst.StandardUncertainty.Millimetres, f.Worst.Tilt.Degrees, f.WorstAtLeast.Millimetres, f.WorstAtMost.Millimetres,
        f.Rms.Millimetres, f.RmsUncertainty.Millimetres, [.. f.Worsts.Select(Place)]);

    private static CardErrorReport Place(ErrorPlace p) => new(p.At.U, p.At.V, p.Error.U, p.Error.V, MarkReport.Matrix(p.Covariance));
}

/// <summary>The error of a mark at (u, v).</summary>
/// <param name="ErrorU">Where it is read, less where it is.</param>
public sealed record CardErrorReport(double U, double V, double ErrorU, double ErrorV, double[][] Covariance);

/// <param name="Probability">Of photos that show at least as much when there is nothing; null where it is not asked.</param>
public sealed record CardTermReport(double Value, double StandardUncertainty, double? Probability, bool Shown)
{
    internal static CardTermReport Of(CardTerm t, double unit) => new(unit * t.Value, unit * t.StandardUncertainty, t.Probability, t.Shown);
}

/// <summary>The rulers.</summary>
/// <param name="U">As it was read.</param>
/// <param name="StandardUncertainty">Of each reading.</param>
/// <param name="PrintedU">By readings and photos together.</param>
/// <param name="PrintedStandardUncertainty">Of that along u.</param>
/// <param name="StretchDifference">Stretch by the readings less that by the photos.</param>
public sealed record CheckedRulersReport(
    double NominalU, double NominalV, double U, double V, double StandardUncertainty, double PrintedU, double PrintedV, double PrintedStandardUncertainty, double StretchDifference, double DifferenceStandardUncertainty, bool Agree);

/// <summary>A photo; one that is not used did not fit the others.</summary>
/// <param name="Differs">Whether it shows another shape than the others.</param>
public sealed record CheckedViewReport(string Name, double? TiltDegrees, double? Distance, int? Sections, int? SectionsUsed, double ResidualPx, bool Used, bool Differs = false);
