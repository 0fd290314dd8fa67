using MarkReader.Application.Measuring;
using MarkReader.Imaging.Pipeline;
using MarkReader.Metrology.Studies;
using MarkReader.Quantities;

namespace MarkReader.Application.Studies;

/// <summary>What a study is of, and its plan.</summary>
/// <param name="Tolerance">Largest distance of a mark from where it should be; null for pulses.</param>
/// <param name="Path">Beam path from the source mirror to the station, for angles; null when it is not known, and for marks.</param>
/// <param name="People">People or phones, who take the photos; empty for pulses.</param>
/// <param name="Count">Photos for each of them, or pulses.</param>
public sealed record StudySetup(StudyKind Kind, string Name, Length? Tolerance, Length? Path, IReadOnlyList<string> People, int Count)
{
    /// <summary>Longest name of a study, and of a person, UTF-16 units.</summary>
    public const int LongestName = 80, LongestPerson = 30;

    /// <summary>Most pulses that a plan asks for.</summary>
    public const int MostPulses = 100;

    /// <summary>What was measured of the printed card and the tape; <see cref="CardInput.Nothing"/> when nothing was. Photos taken from different sides show a tape at another height in different places.</summary>
    public CardInput Card { get; private init; } = CardInput.Nothing;

    /// <summary>How many photos are used at most.</summary>
    public int Photos => Kind == StudyKind.Marks ? People.Count * Count : Count;

    /// <summary>A study of marks; people without a name beside them are left out.</summary>
    public static Outcome<StudySetup> OfMarks(string name, Length tolerance, IEnumerable<string> people, int photosEach)
    {
        string[] names = [.. people.Select(p => p.Trim()).Where(p => p.Length > 0)];
        if (CheckName(name) is { } wrong)
            return wrong;
        if (!(tolerance.Millimetres is > 0 and <= RunStudy.MostTolerance))
            return RunStudy.ToleranceWrong();
        if (names.FirstOrDefault(n => n.Length > LongestPerson || n.Any(char.IsControl)) is { } bad)
            return new Failure(StudyInputFailures.PeopleInvalid, KeptStudyTexts.Word("people.name", Inputs.ListText.Shown(bad), LongestPerson), KeptStudyTexts.Get("people.nameHint"));
        if (names.GroupBy(n => n, StringComparer.OrdinalIgnoreCase).FirstOrDefault(g => g.Count() > 1) is { } twice)
            return new Failure(StudyInputFailures.PeopleInvalid, KeptStudyTexts.Word("people.twice", twice.Key), KeptStudyTexts.Get("people.twiceHint"));
        if (names.Length is < 2 or > StudyPlan.MostOperators)
            return new Failure(StudyInputFailures.PeopleInvalid, KeptStudyTexts.Word("people.count", names.Length), KeptStudyTexts.Word("people.countHint", StudyPlan.MostOperators));
        return photosEach is >= 2 and <= StudyPlan.MostRepeats
            ? new StudySetup(StudyKind.Marks, name.Trim(), tolerance, null, names, photosEach)
            : new Failure(StudyInputFailures.CountInvalid, KeptStudyTexts.Word("count.photos", StudyPlan.MostRepeats), KeptStudyTexts.Get("count.photosHint"));
    }

    /// <summary>A study of pulses at one station.</summary>
    public static Outcome<StudySetup> OfPulses(string name, Length? path, int pulses)
    {
        if (CheckName(name) is { } wrong)
            return wrong;
        if (path is { } p && !(p.Millimetres is > 0 and <= RunScatter.MostPath))
            return RunScatter.PathWrong();
        return pulses is >= PulseScatter.LeastPulses and <= MostPulses
            ? new StudySetup(StudyKind.Pulses, name.Trim(), null, path, [], pulses)
            : new Failure(StudyInputFailures.CountInvalid, KeptStudyTexts.Word("count.pulses", PulseScatter.LeastPulses, MostPulses), KeptStudyTexts.Get("count.pulsesHint"));
    }

    /// <summary>The study with what was measured of the card and the tape, checked.</summary>
    public Outcome<StudySetup> With(CardInput card) => card.ApplyTo(new()).TryGet(out MeasureOptions? _, out Failure? failure) ? this with { Card = card } : failure;

    /// <summary>The study as it was kept.</summary>
    internal StudySetup Kept(CardInput card) => this with { Card = card };

    private static Failure? CheckName(string name) => name.Trim().Length is > 0 and <= LongestName && !name.Any(char.IsControl)
        ? null
        : new(StudyInputFailures.NameInvalid, KeptStudyTexts.Word("name.invalid", LongestName), KeptStudyTexts.Get("name.invalidHint"));
}
