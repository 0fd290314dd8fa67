using MarkReader.Alignment.Estimates;
using MarkReader.Alignment.Shims;
using MarkReader.Alignment.Survey;
using MarkReader.Application.Shims;
using MarkReader.Application.Texts;
using MarkReader.Quantities;

namespace MarkReader.Application.Survey;

/// <summary>A corner survey to be judged.</summary>
/// <param name="Marks">Its marks.</param>
/// <param name="Bed">The full travels; null: as far as the marks reach.</param>
/// <param name="Tolerance">The largest distance of two marks over the bed, mm.</param>
/// <param name="Stock">Washers and sheets for a shim; null for ISO 7089 washers.</param>
public sealed record SurveyRequest(SurveyMarks Marks, Travels? Bed = null, double Tolerance = SurveyRequest.DefaultTolerance, Stock? Stock = null)
{
    public const double DefaultTolerance = 0.5;
}

/// <summary>What a survey says and what to do.</summary>
/// <param name="Bed">The travels that were used.</param>
/// <param name="BedIsGiven">Whether they were given, and not taken from the marks.</param>
/// <param name="Marks">Number of marks.</param>
/// <param name="Diagnosis">Terms, tests, findings, cure, and the survey to expect after it.</param>
/// <param name="Stack">Shims for the cure; null when it needs none.</param>
/// <param name="Spread">The spread over the bed; null when the marks do not determine it.</param>
public sealed record SurveyAnswer(Bed Bed, bool BedIsGiven, int Marks, SurveyDiagnosis Diagnosis, StackAdvice? Stack, SurveySpread? Spread);

/// <summary>The spread over the bed.</summary>
/// <param name="Greatest">The greatest distance between two of the fitted marks.</param>
/// <param name="Tolerance">The largest that is allowed.</param>
/// <param name="Advice">The verdict, and the corner whose mark would decide it.</param>
public sealed record SurveySpread(Length Greatest, Length Tolerance, SpreadAdvice Advice);

/// <summary>From the marks of a corner survey to its diagnosis, its cure with the washers for it, and the verdict.</summary>
public static class DiagnoseSurvey
{
    private const double LeastReach = 10;

    // Low shims are to be met to a part of their height; none at all would else be near enough.
    private const double StackPart = 0.25;

    public static Outcome<SurveyAnswer> Run(SurveyRequest request)
    {
        string tolerance = InputTexts.Get("diagnoseSurvey.sayHowFarApartTwo");
        if (InputChecks.Between(request.Tolerance, (0.01, 100), SurveyInputFailures.ToleranceInvalid, InputTexts.Get("diagnoseSurvey.toleranceSpreadInMm"), tolerance) is { } wrong)
            return wrong;
        IReadOnlyList<SurveyMark> marks = request.Marks.Marks;
        if (!BedOf(request).TryGet(out Bed? bed, out Failure? failure) || !CornerSurvey.Diagnose(bed, marks).TryGet(out SurveyDiagnosis? diagnosis, out failure))
            return failure;
        StackFinding? stack = null;
        if (diagnosis.Cure is ShimCorner shim && !FindShims.Run(Shims(shim.Height.Value.Millimetres, request.Stock)).TryGet(out stack, out failure))
            return failure;
        return new SurveyAnswer(bed, request.Bed is not null, marks.Count, diagnosis, stack?.Advice, Spread(diagnosis, marks, Length.FromMillimetres(request.Tolerance)));
    }

    private static StackRequest Shims(double height, Stock? stock) => new(height, Math.Min(StackRequest.DefaultTolerance, StackPart * height), stock);

    private static Outcome<Bed> BedOf(SurveyRequest request)
    {
        if (request.Bed is { } bed)
            return new Bed(Length.FromMillimetres(bed.X), Length.FromMillimetres(bed.Y));
        (Length x, Length y) = (request.Marks.Marks.Max(m => m.X), request.Marks.Marks.Max(m => m.Y));
        return Math.Min(x.Millimetres, y.Millimetres) >= LeastReach
            ? new Bed(x, y)
            : new Failure(SurveyFailures.BedInvalid, InputTexts.Get("diagnoseSurvey.marksDoNotShowHow"), InputTexts.Get("diagnoseSurvey.giveBothFullTravelsIn"));
    }

    private static SurveySpread? Spread(SurveyDiagnosis diagnosis, IReadOnlyList<SurveyMark> marks, Length tolerance)
    {
        if (diagnosis.Fit is not { } fit)
            return null;
        // One pulse more is as good as the marks were on the average.
        Covariance2 pulse = (1.0 / marks.Count) * marks.Select(m => m.Mark.Covariance).Aggregate((a, b) => a + b);
        return new(Length.FromMillimetres(fit.Differences().Max(d => d.Vector.Magnitude)), tolerance, SurveyPlan.Spread(fit.Bed, marks, tolerance, pulse));
    }
}
