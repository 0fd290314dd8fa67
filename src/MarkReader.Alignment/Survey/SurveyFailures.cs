using MarkReader.Alignment.Estimates;
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
        const string travels = "give the head's and the gantry's full travel in mm";
        if ((InputChecks.Lengths(bed.X.Millimetres, (LeastTravel, MostTravel), BedInvalid, "the head's travel", travels)
            ?? InputChecks.Lengths(bed.Y.Millimetres, (LeastTravel, MostTravel), BedInvalid, "the gantry's travel", travels)) is { } wrong)
            return wrong;
        if (marks.Count > MostMarks)
            return new(TooManyMarks, $"the survey has {marks.Count} marks, more than {MostMarks}", "give the marks of one survey only");
        return marks.Select((m, i) => Check(bed, m, $"mark {i + 1} of the survey")).FirstOrDefault(w => w is not null);
    }

    private static Failure? Check(Bed bed, SurveyMark mark, string which)
    {
        const string place = "give x and y of the head as it stood, from the near ends of both travels";
        CardVector at = mark.Mark.Point - CardPoint.Origin;
        if ((InputChecks.Between(mark.X.Millimetres, (-0.05 * bed.X.Millimetres, 1.05 * bed.X.Millimetres), PlaceOffBed, $"the head's place x in mm at {which}", place)
            ?? InputChecks.Between(mark.Y.Millimetres, (-0.05 * bed.Y.Millimetres, 1.05 * bed.Y.Millimetres), PlaceOffBed, $"the gantry's place y in mm at {which}", place)
            ?? InputChecks.Between(at.Magnitude, (0, FarthestMark), MarkInvalid, $"the distance in mm from the card's centre to {which}", "give u and v of the mark in mm, as measured on the card at the head; a mark so far out does not belong to the head's opening")) is { } wrong)
            return wrong;
        Covariance2 c = mark.Mark.Covariance;
        return c.Determinant > LeastDeterminant && c.Uu <= MostVariance && c.Vv <= MostVariance
            ? null
            : new(MarkInvalid, $"the uncertainty of {which} is not between 0.0001 and 50 mm", "give every mark its standard uncertainty, 0.05 mm when it was measured on a good photo");
    }
}
