using MarkReader.Alignment.Estimates;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Survey;

/// <summary>The cure of a finding, and the survey to expect after it.</summary>
internal static class SurveyOutlook
{
    /// <summary>Highest shim that is proposed, mm. More points to a fault of the frame, or to a response that is nearly none.</summary>
    private const double MostHeight = 10;

    public static IReadOnlyDictionary<BedCorner, MeasuredPoint> None { get; } = new Dictionary<BedCorner, MeasuredPoint>();

    public static SurveyCure Cure(SurveyFinding finding, ShimResponse response)
    {
        if (finding is SlopeFinding slope)
            return new RealignLeg(slope.Leg, GantryEnd.Near);
        TwistFinding twist = (TwistFinding)finding;
        if (!response.IsKnown)
            return new CheckFrame();
        double height = -twist.Height.Value / response.Mean;
        // A corner that would have to be lowered cannot be: with leg 2 aligned at its end of the travel the corner at the other end stands out, the other way.
        if (height < 0)
            return new RealignLeg(2, twist.Corner.End());
        if (height > MostHeight)
            return new CheckFrame();
        double relative = Math.Sqrt(Square(twist.Height.Uncertainty / twist.Height.Value) + Square(response.StandardDeviation / response.Mean));
        return new ShimCorner(twist.Corner, MeasuredLength.FromMillimetres(height, height * relative));
    }

    /// <summary>
    /// The corners' marks after the cure. A shim moves its own corner's mark by response times height. Aligning a leg takes its walk away, along the gantry's end at
    /// which it is done; that all marks move together by a little besides is left out.
    /// </summary>
    public static IReadOnlyDictionary<BedCorner, MeasuredPoint> After(SurveyFit fit, SurveyCure? cure, ShimResponse response) => cure switch
    {
        ShimCorner shim => Corners(fit, corner => corner == shim.Corner ? Shimmed(fit.At(corner), shim, response) : fit.At(corner)),
        RealignLeg { Leg: 2, Gantry: GantryEnd.Near } => Corners(fit, corner => Less(fit, corner, corner.IsRight(), (BedCorner.NearRight, BedCorner.NearLeft))),
        RealignLeg { Leg: 2 } => Corners(fit, corner => Less(fit, corner, corner.IsRight(), (BedCorner.FarRight, BedCorner.FarLeft))),
        RealignLeg => Corners(fit, corner => Less(fit, corner, corner.End() == GantryEnd.Far, (BedCorner.FarLeft, BedCorner.NearLeft))),
        _ => None,
    };

    private static MeasuredPoint Shimmed(MeasuredPoint mark, ShimCorner shim, ShimResponse response)
    {
        double height = shim.Height.Value.Millimetres;
        return new(mark.Point + new CardVector(0, response.Mean * height), mark.Covariance + Covariance2.Along(new(0, response.StandardDeviation * height)));
    }

    private static MeasuredPoint Less(SurveyFit fit, BedCorner corner, bool walks, (BedCorner To, BedCorner From) walk) =>
        walks ? fit.Combine((1, corner), (-1, walk.To), (1, walk.From)) : fit.At(corner);

    private static Dictionary<BedCorner, MeasuredPoint> Corners(SurveyFit fit, Func<BedCorner, MeasuredPoint> after) => BedCorners.All.ToDictionary(corner => corner, after);

    private static double Square(double x) => x * x;
}
