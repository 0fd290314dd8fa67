namespace MarkReader.Application.Interim;

/// <summary>A set of reference photos that is kept.</summary>
/// <param name="Id">Counts up; never used twice.</param>
/// <param name="Reference">What was measured when it was kept; the digests are the ids of the photos.</param>
/// <param name="Checks">What later measured it, one for each version, the latest first.</param>
public sealed record KeptInterimSet(long Id, string Name, InterimRecord Reference, IReadOnlyList<InterimRecord> Checks)
{
    /// <summary>What a version of the program measured beside the reference; null when it has not measured the set again.</summary>
    public InterimCheck? CheckOf(string program) => Checks.FirstOrDefault(c => c.Program == program) is { } check ? InterimCheck.Of(Reference, check) : null;

    /// <summary>How the set stands with a version of the program.</summary>
    public InterimState StateFor(string program) => CheckOf(program) is { } check ? Outcome(check) : Reference.Program == program ? InterimState.Kept : InterimState.Due;

    /// <summary>A photo that differs outweighs one that cannot be compared.</summary>
    public static InterimState Outcome(InterimCheck check) => check.Flagged == 0 ? InterimState.AsBefore : check.Flagged > check.NotCompared ? InterimState.Differs : InterimState.CannotTell;
}

/// <summary>How a set stands.</summary>
public enum InterimState
{
    /// <summary>This version kept it and has not measured it again.</summary>
    Kept,

    /// <summary>This version has not measured it yet.</summary>
    Due,

    /// <summary>Every mark lies where it was, within the stated uncertainty.</summary>
    AsBefore,

    /// <summary>A photo is measured otherwise, beyond the stated uncertainty.</summary>
    Differs,

    /// <summary>Photos are gone; the others are as before.</summary>
    CannotTell,
}
