using MarkReader.Quantities;

namespace MarkReader.Application.Storage;

/// <summary>The refusals of the storage.</summary>
public static class StorageFailures
{
    /// <summary>The data folder cannot be made or written to.</summary>
    public static readonly FailureCode DataFolderUnusable = new("DATA_FOLDER_UNUSABLE", FailureKind.BadInput);

    /// <summary>Another program holds the database longer than the time limit.</summary>
    public static readonly FailureCode DatabaseLocked = new("DATABASE_LOCKED", FailureKind.BadInput);

    /// <summary>The database was written by a later version of the program.</summary>
    public static readonly FailureCode DatabaseNewer = new("DATABASE_NEWER", FailureKind.BadInput);

    /// <summary>The file is no database, or a damaged one.</summary>
    public static readonly FailureCode DatabaseDamaged = new("DATABASE_DAMAGED", FailureKind.BadInput);

    /// <summary>The disk is full or does not take the data.</summary>
    public static readonly FailureCode StorageFull = new("STORAGE_FULL", FailureKind.BadInput);

    /// <summary>No photo or result with this id is kept.</summary>
    public static readonly FailureCode NotKept = new("NOT_KEPT", FailureKind.BadInput);

    /// <summary>The bytes are not those of a JPEG, PNG or WebP file.</summary>
    public static readonly FailureCode NotAPhoto = new("NOT_A_PHOTO", FailureKind.BadInput);

    /// <summary>The original is no longer in the data folder, or its bytes have changed.</summary>
    public static readonly FailureCode OriginalDamaged = new("ORIGINAL_DAMAGED", FailureKind.BadInput);

    /// <summary>A result, a visit or a set of reference photos still refers to the photo.</summary>
    public static readonly FailureCode PhotoInUse = new("PHOTO_IN_USE", FailureKind.BadInput);

    /// <summary>What was to be changed has changed since it was read.</summary>
    public static readonly FailureCode Changed = new("CHANGED_MEANWHILE", FailureKind.BadInput);

    /// <summary>A request's key is missing or has signs that it may not have.</summary>
    public static readonly FailureCode KeyInvalid = new("IDEMPOTENCY_KEY_INVALID", FailureKind.BadInput);

    /// <summary>The key came with another request before.</summary>
    public static readonly FailureCode KeyReused = new("IDEMPOTENCY_KEY_REUSED", FailureKind.BadInput);

    internal static Failure ChangedMeanwhile(string what, long version) => new(
        Changed, StorageTexts.Word("storageFailures.hasChangedMeanwhileAndAt", what, version), StorageTexts.Get("storageFailures.readAgainThenRepeatChange"));

    internal static Failure FolderUnusable(string folder, string reason) => new(
        DataFolderUnusable,
        StorageTexts.Word("storageFailures.dataFolderCannotBeUsed", folder, reason.TrimEnd('.')),
        StorageTexts.Word("storageFailures.makeWritableOrNameAnother", DataFolder.Variable));

    internal static Failure NoPhoto(string id) => new(
        NotKept, StorageTexts.Word("storageFailures.noPhotoKept", Shorten(id)), StorageTexts.Get("common.sendPhotoAgain"));

    internal static Failure NoAim(long id) => new(
        NotKept, StorageTexts.Word("storageFailures.noResultKept", id), StorageTexts.Get("storageFailures.chooseOneFromListResults"));

    private static string Shorten(string id) => id.Length > 12 ? id[..12] + "…" : id;
}
