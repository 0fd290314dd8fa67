using MarkReader.Quantities;

namespace MarkReader.Application.Studies;

/// <summary>Refusals of what people give for a study; those of the numbers are in the mathematics' own list.</summary>
public static class StudyInputFailures
{
    /// <summary>A table of readings cannot be read.</summary>
    public static readonly FailureCode FileUnreadable = new("READINGS_UNREADABLE", FailureKind.BadInput);

    /// <summary>It has no readings.</summary>
    public static readonly FailureCode FileEmpty = new("READINGS_EMPTY", FailureKind.BadInput);

    /// <summary>The folder of a study is not there, or not as it must be.</summary>
    public static readonly FailureCode FolderInvalid = new("STUDY_FOLDER_INVALID", FailureKind.BadInput);

    /// <summary>A photo file cannot be read, or is too large.</summary>
    public static readonly FailureCode PhotoUnreadable = new("FILE_UNREADABLE", FailureKind.BadInput);

    /// <summary>Photos have no two marks in common.</summary>
    public static readonly FailureCode MarksDiffer = new("STUDY_MARKS_DIFFER", FailureKind.NotMeasurable);

    /// <summary>A tolerance or a path that is not above zero, or too large.</summary>
    public static readonly FailureCode LengthInvalid = new("STUDY_LENGTH_INVALID", FailureKind.BadInput);
}
