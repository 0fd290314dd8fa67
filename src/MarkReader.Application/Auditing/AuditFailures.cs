using MarkReader.Quantities;

namespace MarkReader.Application.Auditing;

/// <summary>Refusals of an audit.</summary>
public static class AuditFailures
{
    public static readonly FailureCode FolderMissing = new("AUDIT_FOLDER_MISSING", FailureKind.BadInput);

    public static readonly FailureCode NothingToAudit = new("NOTHING_TO_AUDIT", FailureKind.BadInput);

    public static readonly FailureCode TruthUnreadable = new("TRUTH_UNREADABLE", FailureKind.BadInput);

    public static readonly FailureCode TruthWithoutPhoto = new("TRUTH_WITHOUT_PHOTO", FailureKind.BadInput);

    public static readonly FailureCode PhotoUnreadable = new("FILE_UNREADABLE", FailureKind.BadInput);
}
