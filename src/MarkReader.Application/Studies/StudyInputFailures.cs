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

    /// <summary>A study's name is empty, too long, or has signs that cannot be shown.</summary>
    public static readonly FailureCode NameInvalid = new("STUDY_NAME_INVALID", FailureKind.BadInput);

    /// <summary>The names of people or phones cannot be used, or there are too few or too many.</summary>
    public static readonly FailureCode PeopleInvalid = new("STUDY_PEOPLE_INVALID", FailureKind.BadInput);

    /// <summary>A number of photos or pulses that no study may have.</summary>
    public static readonly FailureCode CountInvalid = new("STUDY_COUNT_INVALID", FailureKind.BadInput);

    /// <summary>What describes a study, or names a machine, cannot be read.</summary>
    public static readonly FailureCode SetupUnreadable = new("STUDY_UNREADABLE", FailureKind.BadInput);

    /// <summary>As many studies are kept as there may be.</summary>
    public static readonly FailureCode TooMany = new("TOO_MANY_STUDIES", FailureKind.BadInput);

    /// <summary>The study has as many photos as its plan asks for, or as there may be.</summary>
    public static readonly FailureCode PhotosEnough = new("STUDY_PHOTOS_ENOUGH", FailureKind.BadInput);

    /// <summary>The same photo was sent for another person, or is there under two names.</summary>
    public static readonly FailureCode PhotoTwice = new("STUDY_PHOTO_TWICE", FailureKind.BadInput);

    /// <summary>The same photo was sent again for the same person.</summary>
    public static readonly FailureCode PhotoAgain = new("STUDY_PHOTO_AGAIN", FailureKind.BadInput);

    /// <summary>Nobody of this name is in the study.</summary>
    public static readonly FailureCode PersonUnknown = new("STUDY_PERSON_UNKNOWN", FailureKind.BadInput);

    /// <summary>What is to be changed does not go with what the study has: photos beside a table, a kind that is another.</summary>
    public static readonly FailureCode Conflict = new("STUDY_CONFLICT", FailureKind.BadInput);

    /// <summary>A photo shows too few marks for its study.</summary>
    public static readonly FailureCode FewMarks = new("STUDY_FEW_MARKS", FailureKind.NotMeasurable);

    /// <summary>Photos are still missing.</summary>
    public static readonly FailureCode NotReady = new("STUDY_NOT_READY", FailureKind.NotMeasurable);

    /// <summary>The scatter that was found is no value for a machine: the marks tell nothing, or hardly come from one station.</summary>
    public static readonly FailureCode NotOffered = new("SCATTER_NOT_OFFERED", FailureKind.NotMeasurable);

    internal static Failure NotKept(long id) => new(Storage.StorageFailures.NotKept, KeptStudyTexts.Word("study.notKept", id), KeptStudyTexts.Get("study.notKeptHint"));
}
