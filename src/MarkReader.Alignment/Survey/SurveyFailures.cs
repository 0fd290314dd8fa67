using MarkReader.Alignment.Estimates;
using MarkReader.Alignment.Texts;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Survey;

/// <summary>Refusals of a corner survey.</summary>
public static class SurveyFailures
{
    public static readonly FailureCode BedInvalid = new("BED_INVALID", FailureKind.BadInput);
    public static readonly FailureCode PlaceOffBed = new("SURVEY_PLACE_OFF_BED", FailureKind.BadInput);
    public static readonly FailureCode MarkInvalid = new("SURVEY_MARK_INVALID", FailureKind.BadInput);
    public static readonly FailureCode TooManyMarks = new("SURVEY_TOO_MANY_MARKS", FailureKind.BadInput);

    /// <summary>Most marks of one survey.</summary>
    public const int MostMarks = 200;

    /// <summary>Farthest mark from the card's origin, mm. The opening is seldom wider than 18 mm; a mark this far off is one of another target or in another unit.</summary>
    public const double FarthestMark = 50;

    private const double LeastTravel = 10, MostTravel = 20_000;

    // 0.0001 and 50 mm, as for the marks of a leg.
    private const double LeastDeterminant = 1e-16, MostVariance = 2500;

    internal static Failure? Check(Bed bed, IReadOnlyList<SurveyMark> marks)
    {
        string travels = AlignmentTexts.Get("surveyFailures.giveHeadAndGantryFull");
        if ((InputChecks.Lengths(bed.X.Millimetres, (LeastTravel, MostTravel), BedInvalid, AlignmentTexts.Get("surveyFailures.headTravel"), travels)
            ?? InputChecks.Lengths(bed.Y.Millimetres, (LeastTravel, MostTravel), BedInvalid, AlignmentTexts.Get("surveyFailures.gantryTravel"), travels)) is { } wrong)
            return wrong;
        if (marks.Count > MostMarks)
            return new(TooManyMarks, AlignmentTexts.Word("surveyFailures.surveyHasMarksMoreThan", marks.Count, MostMarks), AlignmentTexts.Get("surveyFailures.giveMarksOneSurveyOnly"));
        return marks.Select((m, i) => Check(bed, m, AlignmentTexts.Say("surveyFailures.markSurvey", i + 1))).FirstOrDefault(w => w is not null);
    }

    private static Failure? Check(Bed bed, SurveyMark mark, string which)
    {
        string place = AlignmentTexts.Get("surveyFailures.giveXAndYHead");
        CardVector at = mark.Mark.Point - CardPoint.Origin;
        if ((InputChecks.Between(mark.X.Millimetres, (-0.05 * bed.X.Millimetres, 1.05 * bed.X.Millimetres), PlaceOffBed, AlignmentTexts.Say("surveyFailures.headPlaceXInMm", which), place)
            ?? InputChecks.Between(mark.Y.Millimetres, (-0.05 * bed.Y.Millimetres, 1.05 * bed.Y.Millimetres), PlaceOffBed, AlignmentTexts.Say("surveyFailures.gantryPlaceYInMm", which), place)
            ?? InputChecks.Between(at.Magnitude, (0, FarthestMark), MarkInvalid, AlignmentTexts.Say("surveyFailures.distanceInMmFromCard", which), AlignmentTexts.Get("surveyFailures.giveUAndVMark"))) is { } wrong)
            return wrong;
        Covariance2 c = mark.Mark.Covariance;
        return c.Determinant > LeastDeterminant && c.Uu <= MostVariance && c.Vv <= MostVariance
            ? null
            : new(MarkInvalid, AlignmentTexts.Word("surveyFailures.uncertaintyNotBetweenAndMm", which), AlignmentTexts.Get("surveyFailures.giveEveryMarkStandardUncertainty"));
    }
}
