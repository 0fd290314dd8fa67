using MarkReader.Quantities;

namespace MarkReader.Application.Interim;

/// <summary>Refusals of an interim check.</summary>
public static class InterimFailures
{
    public static readonly FailureCode FolderInvalid = new("INTERIM_FOLDER_INVALID", FailureKind.BadInput);

    public static readonly FailureCode RecordUnreadable = new("INTERIM_RECORD_UNREADABLE", FailureKind.BadInput);

    public static readonly FailureCode NameInvalid = new("INTERIM_NAME_INVALID", FailureKind.BadInput);

    public static readonly FailureCode TooManyPhotos = new("INTERIM_MANY_PHOTOS", FailureKind.BadInput);

    /// <summary>As many sets are kept as there may be.</summary>
    public static readonly FailureCode TooManySets = new("TOO_MANY_INTERIM_SETS", FailureKind.BadInput);

    /// <summary>A set of which no photo has a mark has nothing to compare.</summary>
    public static readonly FailureCode NoMarks = new("INTERIM_NO_MARKS", FailureKind.NotMeasurable);

    /// <summary>There is no result of this version that could be kept as a set.</summary>
    public static readonly FailureCode NotMeasured = new("INTERIM_NOT_MEASURED", FailureKind.BadInput);

    /// <summary>The program no longer measures as it did.</summary>
    public static readonly FailureCode Differs = new("INTERIM_DIFFERS", FailureKind.NotMeasurable);
}
