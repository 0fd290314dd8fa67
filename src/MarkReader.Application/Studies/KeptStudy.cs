using MarkReader.Quantities;

namespace MarkReader.Application.Studies;

/// <summary>A study that is kept, without its photos.</summary>
/// <param name="Id">Counts up; never used twice.</param>
/// <param name="Version">1 at first; one more with each change.</param>
/// <param name="BegunAt">When it was begun (UTC, to the millisecond).</param>
/// <param name="ChangedAt">When it last changed.</param>
/// <param name="Photos">How many photos were sent to it, with those that are not used.</param>
/// <param name="HasReadings">Whether a table of readings stands in place of photos.</param>
public sealed record StudyEntry(long Id, StudySetup Setup, long Version, DateTimeOffset BegunAt, DateTimeOffset ChangedAt, int Photos, bool HasReadings);

/// <summary>A study that is kept.</summary>
/// <param name="Photos">In the order in which they came.</param>
/// <param name="Readings">The table of readings; null when there is none.</param>
public sealed record KeptStudy(StudyEntry Entry, IReadOnlyList<KeptStudyPhoto> Photos, KeptReadings? Readings)
{
    public StudySetup Setup => Entry.Setup;

    /// <summary>How many photos of a person are used.</summary>
    public int UsedOf(string person) => Photos.Count(p => p.Marks is not null && p.Person == person);
}

/// <summary>A photo of a study, measured once when it came in; the photo itself is not kept.</summary>
/// <param name="Number">From 1, in its study.</param>
/// <param name="Person">Who took it, or with which phone; empty for pulses.</param>
/// <param name="Digest">SHA-256 of its bytes, in hexadecimal digits.</param>
/// <param name="File">Name of the file that was sent.</param>
/// <param name="AddedAt">When it came in.</param>
/// <param name="Marks">What was measured; null when it is not used.</param>
/// <param name="Refusal">Why it is not used; null when it is.</param>
public sealed record KeptStudyPhoto(int Number, string Person, string Digest, string File, DateTimeOffset AddedAt, IReadOnlyList<StudyMark>? Marks, Failure? Refusal)
{
    /// <summary>What tells it from the others.</summary>
    public string Name => KeptStudyTexts.Say("photo.name", Number);

    /// <summary>What messages call it: its number, who took it, and the file.</summary>
    public string Called => Person.Length > 0 ? KeptStudyTexts.Say("photo.calledOf", Number, Person, File) : KeptStudyTexts.Say("photo.called", Number, File);
}

/// <summary>A table of readings.</summary>
/// <param name="Text">As it was sent.</param>
/// <param name="PerPhoto">Whether rows with the same operator and repeat were read in one photo; without meaning for pulses.</param>
public sealed record KeptReadings(string Text, bool PerPhoto);

/// <summary>A photo that was added to a study.</summary>
/// <param name="Number">The photo's number.</param>
/// <param name="IsNew">False when the same bytes had come before.</param>
public sealed record StudyPhotoReceipt(KeptStudy Study, int Number, bool IsNew)
{
    public KeptStudyPhoto Photo => Study.Photos.First(p => p.Number == Number);

    /// <summary>That the photo counts once; null when it is new.</summary>
    public Failure? Again => IsNew ? null : new(StudyInputFailures.PhotoAgain, KeptStudyTexts.Word("photo.again", Number), KeptStudyTexts.Get("photo.againHint"));
}
