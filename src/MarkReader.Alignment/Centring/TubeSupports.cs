using MarkReader.Alignment.Estimates;
using MarkReader.Alignment.Texts;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Centring;

/// <summary>The two supports of the tube, by their distances from mirror one's reflecting point along the beam.</summary>
/// <param name="Front">The support nearer to mirror one.</param>
/// <param name="Rear">The other one.</param>
/// <remarks>
/// Raising the front support by h, with the rear one as the hinge, raises the beam at mirror one by h·R/(R − F) and tilts it by h/(R − F), so that both legs
/// are to be aligned again; they then run level from the new height, and every steady mark stands higher by the same amount.
/// </remarks>
public sealed record TubeSupports(MeasuredLength Front, MeasuredLength Rear)
{
    internal const double LeastDistance = 50, MostDistance = 5_000;

    /// <summary>How much to raise the front support so that the beam at mirror one rises by this height: h = Δ·(R − F)/R.</summary>
    public MeasuredLength FrontRise(MeasuredLength rise)
    {
        double f = Front.Value.Millimetres, r = Rear.Value.Millimetres, d = rise.Value.Millimetres;
        double byRise = (r - f) / r, byFront = -d / r, byRear = d * f / (r * r);
        double variance = Square(byRise * rise.Uncertainty.Millimetres) + Square(byFront * Front.Uncertainty.Millimetres) + Square(byRear * Rear.Uncertainty.Millimetres);
        return MeasuredLength.FromMillimetres(d * byRise, Math.Sqrt(variance));
    }

    /// <summary>The tilt that this gives the beam: h/(R − F) = Δ/R, upwards along the beam.</summary>
    public Angle Tilt(Length rise) => Angle.FromRadians(Math.Atan(rise.Millimetres / Rear.Value.Millimetres));

    internal Failure? Check()
    {
        string hint = AlignmentTexts.Get("tubeSupports.measureFromMirrorOneAlong");
        double f = Front.Value.Millimetres, r = Rear.Value.Millimetres;
        return InputChecks.Lengths(f, (0, MostDistance), CentringFailures.SupportsInvalid, AlignmentTexts.Get("tubeSupports.frontSupportDistance"), hint)
            ?? InputChecks.Lengths(r - f, (LeastDistance, MostDistance), CentringFailures.SupportsInvalid, AlignmentTexts.Get("tubeSupports.distanceBetweenSupports"), hint)
            ?? InputChecks.Lengths(Math.Max(Front.Uncertainty.Millimetres, Rear.Uncertainty.Millimetres), (0, LeastDistance), CentringFailures.SupportsInvalid, AlignmentTexts.Get("tubeSupports.uncertaintySupportDistance"), hint);
    }

    private static double Square(double x) => x * x;
}
