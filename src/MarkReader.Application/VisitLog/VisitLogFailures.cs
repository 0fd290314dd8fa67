using MarkReader.Application.Storage;
using MarkReader.Quantities;

namespace MarkReader.Application.VisitLog;

/// <summary>Refusals of what is added to a visit that is kept.</summary>
public static class VisitLogFailures
{
    /// <summary>What a visit is begun with is not JSON, or a field of it cannot be used.</summary>
    public static readonly FailureCode BeginningUnreadable = new("VISIT_BEGINNING_UNREADABLE", FailureKind.BadInput);

    /// <summary>The event is not one JSON object, or refers to a photo's mark in a way that cannot be used.</summary>
    public static readonly FailureCode EventUnreadable = new("EVENT_UNREADABLE", FailureKind.BadInput);

    /// <summary>The photo has no mark of this number.</summary>
    public static readonly FailureCode PhotoMarkUnknown = new("PHOTO_MARK_UNKNOWN", FailureKind.BadInput);

    /// <summary>This mark of this photo is in the visit already.</summary>
    public static readonly FailureCode PhotoMarkUsed = new("PHOTO_MARK_USED", FailureKind.BadInput);

    /// <summary>A mark was typed that lies beside the card; it may be there all the same.</summary>
    public static readonly FailureCode TypedOffCard = new("TYPED_OFF_CARD", FailureKind.BadInput);

    /// <summary>The visit's file would become larger than one that can be read.</summary>
    public static readonly FailureCode TooLarge = new("VISIT_TOO_LARGE", FailureKind.BadInput);

    /// <summary>No event counts that could be taken back.</summary>
    public static readonly FailureCode NothingToTakeBack = new("NOTHING_TO_TAKE_BACK", FailureKind.BadInput);

    /// <summary>The event is not one that counts.</summary>
    public static readonly FailureCode EventUnknown = new("EVENT_UNKNOWN", FailureKind.BadInput);

    /// <summary>As many visits are kept as there may be.</summary>
    public static readonly FailureCode TooMany = new("TOO_MANY_VISITS", FailureKind.BadInput);

    /// <summary>What was sent was made for another state of the visit.</summary>
    public static Failure GoneOn(long id) => new(StorageFailures.Changed, VisitLogTexts.Word("visitLogFailures.visitHasGoneOnMeanwhile", id), VisitLogTexts.Get("visitLogFailures.lookAtWhatAsksFor"));

    internal static Failure Full() => new(TooMany, VisitLogTexts.Word("visitLogFailures.visitsKeptAlready", VisitStore.Most), VisitLogTexts.Get("visitLogFailures.deleteThoseThatNoLonger"));

    internal static Failure NotKept(long id) => new(StorageFailures.NotKept, VisitLogTexts.Word("visitLogFailures.noVisitKept", id), VisitLogTexts.Get("visitLogFailures.chooseOneFromListVisits"));
}
