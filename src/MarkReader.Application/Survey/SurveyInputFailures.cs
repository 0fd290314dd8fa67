using MarkReader.Quantities;

namespace MarkReader.Application.Survey;

/// <summary>Refusals of a survey as people give it.</summary>
public static class SurveyInputFailures
{
    public static readonly FailureCode FileUnreadable = new("SURVEY_FILE_UNREADABLE", FailureKind.BadInput);
    public static readonly FailureCode FileEmpty = new("SURVEY_FILE_EMPTY", FailureKind.BadInput);
    public static readonly FailureCode BedUnreadable = new("BED_UNREADABLE", FailureKind.BadInput);
    public static readonly FailureCode ToleranceInvalid = new("SURVEY_TOLERANCE_INVALID", FailureKind.BadInput);
}
