using MarkReader.Quantities;

namespace MarkReader.Application.Interim;

/// <summary>An interim check in words, for pages and for programs.</summary>
public static class InterimWords
{
    /// <summary>How a set stands, in a few words.</summary>
    public static string Short(InterimState state) => InterimTexts.Get($"state.{state}");

    /// <summary>The outcome of a check in a sentence.</summary>
    public static Wording Outcome(InterimCheck check) => KeptInterimSet.Outcome(check) switch
    {
        InterimState.AsBefore when check.Largest == 0 => InterimTexts.Word("outcome.same", check.Photos.Count),
        InterimState.AsBefore => InterimTexts.Word("outcome.asBefore", check.Photos.Count, Fine(check.Largest)),
        InterimState.Differs => InterimTexts.Word("outcome.differs", check.Flagged - check.NotCompared, check.Photos.Count),
        _ => InterimTexts.Word("outcome.cannotTell", check.NotCompared, check.Photos.Count),
    };

    /// <summary>What to do about it; null when there is nothing to do.</summary>
    public static string? Advice(InterimCheck check) => KeptInterimSet.Outcome(check) switch
    {
        InterimState.Differs => InterimTexts.Get("differs.hint"),
        InterimState.CannotTell => InterimTexts.Get("cannotTell.hint"),
        _ => null,
    };

    /// <summary>How one photo came out.</summary>
    public static Wording Photo(InterimComparison photo) => photo switch
    {
        { Verdict: InterimVerdict.Same or InterimVerdict.Within, Before: { Refusal: not null } before } => InterimTexts.Word("photo.refusedAsBefore", before.Why ?? before.Refusal),
        { Verdict: InterimVerdict.OtherMarks, Now: { Refusal: not null } now } => InterimTexts.Word("photo.refusedNow", now.Why ?? now.Refusal),
        { Verdict: InterimVerdict.OtherMarks, Before.Refusal: not null } => InterimTexts.Word("photo.measuredNow", photo.Now!.Marks.Count),
        { Verdict: InterimVerdict.OtherMarks } when photo.Before!.Marks.Count == photo.Now!.Marks.Count => InterimTexts.Word("photo.elsewhere", new SaidLength(InterimCheck.SameMark)),
        { Verdict: InterimVerdict.OtherMarks } => InterimTexts.Word("photo.otherCount", photo.Before!.Marks.Count, photo.Now!.Marks.Count),
        _ => InterimTexts.Get($"photo.{photo.Verdict}"),
    };

    private static SaidLength Fine(double mm) => new(mm, "0.0000");
}
