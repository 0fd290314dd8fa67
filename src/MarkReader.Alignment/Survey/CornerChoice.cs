using MarkReader.Alignment.Estimates;
using MarkReader.Quantities;
using MathNet.Numerics.LinearAlgebra;

namespace MarkReader.Alignment.Survey;

/// <summary>Which corner of a twisted frame stands out.</summary>
internal static class CornerChoice
{
    /// <summary>
    /// For every corner the vertical slopes that remain among the other three are compared with what alignment leaves: weight ∝ their normal
    /// density with the covariance of the estimate plus that of the walk left.
    /// </summary>
    public static TwistFinding Of(SurveyFit fit, CornerSurvey.Terms terms, Length walkLeft, double probability)
    {
        Dictionary<BedCorner, double> log = BedCorners.All.ToDictionary(corner => corner, corner =>
        {
            CornerSurvey.Terms about = About(corner, fit, terms);
            (int s, int t) = (fit.Index(SurveyComponent.Vertical, SurveyTerm.OverHeadTravel), fit.Index(SurveyComponent.Vertical, SurveyTerm.OverGantryTravel));
            double left = walkLeft.Millimetres * walkLeft.Millimetres;
            Covariance2 spread = about.Covariance.Points(s, t) + new Covariance2(left, 0, left);
            return -(spread.MahalanobisSquared(new(about.Values[s], about.Values[t])) + Math.Log(spread.Determinant)) / 2;
        });
        double top = log.Values.Max(), sum = log.Values.Sum(l => Math.Exp(l - top));
        BedCorner best = log.MaxBy(c => c.Value).Key;
        int twist = fit.Index(SurveyComponent.Vertical, SurveyTerm.Twist);
        return new(
            best,
            new(Sign(best) * terms.Values[twist], Math.Sqrt(terms.Covariance[twist, twist])),
            log.ToDictionary(c => c.Key, c => Math.Exp(c.Value - top) / sum),
            probability);
    }

    /// <summary>
    /// The terms written about a corner: a plane through the other three and a bilinear bump of height ±s·t at the corner, so that the slopes are
    /// those among the three. For the right near corner the bump is s·(1 − t), for the left far one (1 − s)·t, for the left near one (1 − s)·(1 − t).
    /// </summary>
    public static CornerSurvey.Terms About(BedCorner corner, SurveyFit fit, CornerSurvey.Terms terms)
    {
        int twist = fit.Index(SurveyComponent.Vertical, SurveyTerm.Twist);
        Matrix<double> change = Matrix<double>.Build.DenseIdentity(terms.Values.Count);
        if (corner.End() == GantryEnd.Near)
            change[fit.Index(SurveyComponent.Vertical, SurveyTerm.OverHeadTravel), twist] = 1;
        if (!corner.IsRight())
            change[fit.Index(SurveyComponent.Vertical, SurveyTerm.OverGantryTravel), twist] = 1;
        return new(change * terms.Values, change * terms.Covariance.TransposeAndMultiply(change));
    }

    /// <summary>Height of the corner's bump for s·t = 1.</summary>
    public static double Sign(BedCorner corner) => corner is BedCorner.FarRight or BedCorner.NearLeft ? 1 : -1;
}
