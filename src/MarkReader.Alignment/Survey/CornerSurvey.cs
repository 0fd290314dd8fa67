using MarkReader.Alignment.Estimates;
using MarkReader.Quantities;
using MathNet.Numerics;
using MathNet.Numerics.LinearAlgebra;
using static MarkReader.Quantities.Texts<MarkReader.Alignment.Texts.AdviserTexts>;

namespace MarkReader.Alignment.Survey;

/// <summary>The diagnosis of a corner survey.</summary>
/// <remarks>
/// Each test is a χ² of the terms against their stated covariance, so that noise is not read as a fault; levels: <see cref="SurveyOptions"/>. The twist is
/// s·t of the vertical component and does not depend on the slopes. A term that is not significant is held at zero when the slopes are tested. One number, s·t, cannot say
/// which corner stands out: the corner is the one that leaves the least slopes among the other three, since the legs were aligned before.
/// </remarks>
public static class CornerSurvey
{
    /// <summary>The warning that the sideways walk differs between the ends of the gantry's travel.</summary>
    public const string Skewed = "surveySkewed";

    private const double WarnBelow = 0.01;

    public static Outcome<SurveyDiagnosis> Diagnose(Bed bed, IReadOnlyList<SurveyMark> marks, SurveyOptions? options = null)
    {
        options ??= SurveyOptions.Default;
        if (SurveyFailures.Check(bed, marks) is { } wrong)
            return wrong;
        if (SurveyFit.Solve(bed, marks) is not { } fit)
            return new SurveyDiagnosis(null, [], null, null, SurveyOutlook.None, MissingPlace(bed, marks), []);

        Terms terms = new(fit.Parameters, fit.Covariance);
        List<SurveyFinding> findings = [];
        int twist = fit.Index(SurveyComponent.Vertical, SurveyTerm.Twist), skew = fit.Index(SurveyComponent.Sideways, SurveyTerm.Twist);
        bool skewed = terms.Test(skew) <= WarnBelow;
        if (!skewed)
            terms = terms.Without(skew);
        double twistProbability = terms.Test(twist);
        SurveyTest ofTwist = new(SurveyFault.Twist, Math.Abs(terms.Values[twist]), twistProbability, options.TwistLevel);
        if (twistProbability <= options.TwistLevel)
        {
            TwistFinding found = CornerChoice.Of(fit, terms, options.WalkLeft, twistProbability);
            findings.Add(found);
            terms = CornerChoice.About(found.Corner, fit, terms);
        }
        else
        {
            terms = terms.Without(twist);
        }

        SlopeFinding[] slopes = [.. Slopes(fit, terms)];
        findings.AddRange(slopes.Where(s => s.Probability <= options.SlopeLevel));
        // Largest effect first; the order of the work decides between equals.
        SurveyFinding[] sorted = [.. findings.OrderByDescending(f => f.Effect).ThenBy(f => f.Fault)];
        SurveyCure? cure = sorted.Length > 0 ? SurveyOutlook.Cure(sorted[0], options.Response) : null;
        return new SurveyDiagnosis(
            fit,
            sorted,
            fit.Coefficient(SurveyComponent.Vertical, SurveyTerm.Twist),
            cure,
            SurveyOutlook.After(fit, cure, options.Response),
            null,
            [.. Warnings(fit, skewed)])
        {
            Tests = [.. slopes.Select(s => new SurveyTest(s.Fault, s.Effect, s.Probability, options.SlopeLevel)), ofTwist],
        };
    }

    private static IEnumerable<SlopeFinding> Slopes(SurveyFit fit, Terms terms)
    {
        yield return Slope(1, SurveyTerm.OverGantryTravel, fit.Bed.Y);
        yield return Slope(2, SurveyTerm.OverHeadTravel, fit.Bed.X);

        SlopeFinding Slope(int leg, SurveyTerm term, Length travel)
        {
            int u = fit.Index(SurveyComponent.Sideways, term), v = fit.Index(SurveyComponent.Vertical, term);
            CardVector walk = new(terms.Values[u], terms.Values[v]);
            Covariance2 covariance = terms.Covariance.Points(u, v);
            return new(leg, walk, covariance, (1000 / travel.Millimetres) * walk, Math.Exp(-covariance.MahalanobisSquared(walk) / 2));
        }
    }

    private static IEnumerable<Warning> Warnings(SurveyFit fit, bool skewed)
    {
        if (skewed)
            yield return new(Skewed, Get("warning.surveySkewed"));
        if (fit.Quality.Probability < WarnBelow)
            yield return new("surveyOffModel", Get("warning.surveyOffModel"));
        int[] bows = [.. from term in new[] { SurveyTerm.HeadBow, SurveyTerm.GantryBow } from c in Enum.GetValues<SurveyComponent>() let at = fit.Index(c, term) where at >= 0 select at];
        Terms terms = new(fit.Parameters, fit.Covariance);
        if (bows.Length > 0 && bows.Min(terms.Test) * bows.Length < WarnBelow)
            yield return new("railBent", Get("warning.railBent"));
    }

    // The corner farthest from the marks there are; the near left one first.
    private static (Length X, Length Y) MissingPlace(Bed bed, IReadOnlyList<SurveyMark> marks) => BedCorners.All
        .Select(bed.Place)
        .MaxBy(p => marks.Count == 0 ? 0 : marks.Min(m => Math.Pow((m.X - p.X).Millimetres / bed.X.Millimetres, 2) + Math.Pow((m.Y - p.Y).Millimetres / bed.Y.Millimetres, 2)));

    /// <summary>Coefficients with their covariance, some of them held at zero.</summary>
    internal sealed record Terms(Vector<double> Values, Matrix<double> Covariance)
    {
        /// <summary>Probability of a coefficient at least as large when it is truly zero.</summary>
        public double Test(int at) => SpecialFunctions.Erfc(Math.Abs(Values[at]) / Math.Sqrt(2 * Covariance[at, at]));

        /// <summary>The others' estimates when one is known to be zero: b − C·a·(aᵀ·C·a)⁻¹·aᵀ·b, a its unit vector.</summary>
        public Terms Without(int at)
        {
            Vector<double> column = Covariance.Column(at);
            return new(Values - (column * (Values[at] / column[at])), Covariance - (column.OuterProduct(column) / column[at]));
        }
    }
}
