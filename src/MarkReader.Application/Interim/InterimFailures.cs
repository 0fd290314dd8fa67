using MarkReader.Quantities;

namespace MarkReader.Application.Interim;

/// <summary>Refusals of an interim check.</summary>
public static class InterimFailures
{
    public static readonly FailureCode FolderInvalid = new("INTERIM_FOLDER_INVALID", FailureKind.BadInput);

    public static readonly FailureCode RecordUnreadable = new("INTERIM_RECORD_UNREADABLE", FailureKind.BadInput);

    /// <summary>The program no longer measures as it did.</summary>
    public static readonly FailureCode Differs = new("INTERIM_DIFFERS", FailureKind.NotMeasurable);
}
