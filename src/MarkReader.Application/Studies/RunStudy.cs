using MarkReader.Metrology.Studies;
using MarkReader.Quantities;

namespace MarkReader.Application.Studies;

/// <summary>What a study is asked.</summary>
/// <param name="Tolerance">Largest distance of a mark from where it should be; its double is the full width on each axis.</param>
/// <param name="PoolAbove">See <see cref="GaugeOptions.PoolAbove"/>.</param>
/// <param name="Denominator">See <see cref="GaugeOptions.Denominator"/>.</param>
/// <param name="Width">Wanted half-width of the gauge's interval, for the plan of the next study.</param>
public sealed record StudyRequest(StudyReadings Readings, Length Tolerance, double PoolAbove, AnovaDenominator Denominator, double Width)
{
    /// <summary>Of a leg (common practice).</summary>
    public static Length UsualTolerance { get; } = Length.FromMillimetres(0.5);

    /// <summary>A gauge known to about ±50 %.</summary>
    public const double UsualWidth = 0.5;
}

/// <summary>One axis of a study.</summary>
/// <param name="Axis">u or v.</param>
/// <param name="Repeatability">Against what was stated; null when nothing was.</param>
/// <param name="Gauge">The same of the whole gauge.</param>
public sealed record StudyAxis(string Axis, GaugeStudy Study, StatedComparison? Repeatability, StatedComparison? Gauge);

/// <summary>A study of both axes.</summary>
/// <param name="Plan">For a next study with the components found, on the worse axis.</param>
public sealed record StudyAnswer(StudyRequest Request, StudyAxis U, StudyAxis V, StudyPlan Plan)
{
    /// <summary>The axis with the larger gauge.</summary>
    public StudyAxis Worse => U.Study[StudyPart.Gauge].Variance >= V.Study[StudyPart.Gauge].Variance ? U : V;

    public IReadOnlyList<StudyAxis> Axes => [U, V];
}

/// <summary>A repeatability and reproducibility study of marks: u and v apart, since a gauge may be worse along one of them.</summary>
public static class RunStudy
{
    /// <summary>Largest tolerance, mm.</summary>
    public const double MostTolerance = 100;

    public static Outcome<StudyAnswer> Run(StudyRequest request)
    {
        if (!(request.Tolerance.Millimetres is > 0 and <= MostTolerance))
            return ToleranceWrong();
        if (!Axis(request, "u", r => r.At.U, c => c.Uu).TryGet(out StudyAxis? u, out Failure? failure) || !Axis(request, "v", r => r.At.V, c => c.Vv).TryGet(out StudyAxis? v, out failure))
            return failure;
        GaugeStudy worse = u.Study[StudyPart.Gauge].Variance >= v.Study[StudyPart.Gauge].Variance ? u.Study : v.Study;
        if (!StudyPlan.For(request.Width, Math.Min(worse.Size.Parts, StudyPlan.MostParts), ExpectedShares.Of(worse)).TryGet(out StudyPlan? plan, out failure))
            return failure;
        return new StudyAnswer(request, u, v, plan);
    }

    internal static Failure ToleranceWrong() =>
        new(StudyInputFailures.LengthInvalid, StudyTexts.Word("runStudy.toleranceNotAboveAndAt", new SaidLength(MostTolerance)), StudyTexts.Word("runStudy.giveLargestDistanceMarkFrom", new SaidLength(StudyRequest.UsualTolerance.Millimetres)));

    private static Outcome<StudyAxis> Axis(StudyRequest request, string name, Func<StudyReading, double> value, Func<Covariance2, double> variance)
    {
        IReadOnlyList<StudyReading> readings = request.Readings.All;
        GaugeOptions options = new() { Photos = request.Readings.Photos, PoolAbove = request.PoolAbove, Denominator = request.Denominator };
        if (!GaugeStudy.Run([.. readings.Select(r => new Reading(r.Part, r.Operator, r.Repeat, value(r)))], options).TryGet(out GaugeStudy? study, out Failure? failure))
            return failure;
        double stated = readings.All(r => r.Stated is not null) ? Math.Sqrt(readings.Average(r => variance(r.Stated!))) : 0;
        return new StudyAxis(name, study, StatedComparison.Of(study[StudyPart.Repeatability], stated), StatedComparison.Of(study[StudyPart.Gauge], stated));
    }
}
