using MarkReader.Quantities;

namespace MarkReader.Application.VisitLog.Bundles;

/// <summary>Refusals of a file that holds a whole visit.</summary>
public static class BundleFailures
{
    /// <summary>It is not such a file, is cut off, or a part of it cannot be used.</summary>
    public static readonly FailureCode Unreadable = new("BUNDLE_UNREADABLE", FailureKind.BadInput);

    /// <summary>It is larger, or becomes larger when it is unpacked, than such a file may be.</summary>
    public static readonly FailureCode TooLarge = new("BUNDLE_TOO_LARGE", FailureKind.BadInput);

    /// <summary>It holds a file that does not belong in it.</summary>
    public static readonly FailureCode EntryUnknown = new("BUNDLE_ENTRY_UNKNOWN", FailureKind.BadInput);

    /// <summary>A photo in it is not the one that its name says, or is missing.</summary>
    public static readonly FailureCode PhotoWrong = new("BUNDLE_PHOTO_WRONG", FailureKind.BadInput);

    /// <summary>A later version of the program wrote it.</summary>
    public static readonly FailureCode Newer = new("BUNDLE_NEWER", FailureKind.BadInput);

    internal static Failure Wrong(string what) => new(Unreadable, what, VisitLogTexts.Get("bundleFailures.useFileAsCameFrom"));

    internal static Failure Large(string what) => new(TooLarge, what, VisitLogTexts.Get("bundleFailures.handOverVisitFileAnd"));
}
