using System.Text;
using MarkReader.Metrology.Studies;
using MarkReader.Quantities;

namespace MarkReader.Application.Studies;

/// <summary>How far a study is: what is still missing, and the result when there is one.</summary>
/// <param name="People">In the order of the plan; empty for pulses.</param>
/// <param name="Pulses">Marks of pulses so far; 0 for a study of marks.</param>
/// <param name="Missing">Photos, or pulses, that the plan still asks for.</param>
public sealed record StudyStanding(IReadOnlyList<PersonStanding> People, int Pulses, int Missing)
{
    /// <summary>Of a study of marks; null while there is none.</summary>
    public StudyAnswer? Marks { get; private init; }

    /// <summary>Of a study of pulses; null while there is none.</summary>
    public ScatterAnswer? Scatter { get; private init; }

    /// <summary>Why there is no result yet; null when there is one.</summary>
    public Failure? NotYet { get; private init; }

    /// <summary>Numbers of the photos that show other marks than most, for which the result waits.</summary>
    public IReadOnlyList<int> Others { get; private init; } = [];

    /// <summary>The interval to be expected of the planned study's gauge; null for pulses, and of a table.</summary>
    /// <param name="marks">In each photo.</param>
    public static PlannedStudy? Expected(StudySetup setup, int marks) =>
        setup.Kind == StudyKind.Marks ? StudyPlan.Of(new(marks, setup.People.Count, setup.Count), ExpectedShares.Usual) : null;

    public static StudyStanding Of(KeptStudy study) => study.Setup.Kind == StudyKind.Marks ? OfMarks(study) : OfPulses(study);

    private static StudyStanding OfMarks(KeptStudy study)
    {
        StudySetup setup = study.Setup;
        PersonStanding[] people = [.. setup.People.Select(p => new PersonStanding(p, study.UsedOf(p), Math.Max(0, setup.Count - study.UsedOf(p))))];
        KeptStudyPhoto[] kept = study.Readings is null ? [.. study.Photos.Where(p => p.Marks is not null)] : [];
        StudyPhoto[] photos = [.. kept.Select(p => new StudyPhoto(p.Person, p.Name, p.Called, p.Marks!))];
        IReadOnlyList<StudyPhoto> odd = SharedMarks.Odd(photos);
        StudyStanding standing = new(people, 0, study.Readings is null ? people.Sum(p => p.Missing) : 0) { Others = [.. kept.Where((_, i) => odd.Contains(photos[i])).Select(p => p.Number)] };
        // Told while its target is still at hand.
        if (odd.Count > 0)
            return standing with { NotYet = SharedMarks.OtherTarget(odd, photos.Length - odd.Count) };
        if (!Readings(study, people, photos).TryGet(out StudyReadings? readings, out Failure? failure)
            || !RunStudy.Run(new(readings, setup.Tolerance!.Value, GaugeOptions.Default.PoolAbove, AnovaDenominator.Interaction, StudyRequest.UsualWidth)).TryGet(out StudyAnswer? answer, out failure))
            return standing with { NotYet = failure };
        return standing with { Marks = answer };
    }

    private static Outcome<StudyReadings> Readings(KeptStudy study, PersonStanding[] people, StudyPhoto[] photos)
    {
        if (study.Readings is { } table)
        {
            return ReadingsFile.Study(Encoding.UTF8.GetBytes(table.Text), table.PerPhoto).TryGet(out StudyReadings? readings, out Failure? failure)
                ? PlanNames.Match(readings, study.Setup.People)
                : failure;
        }

        // A result before the plan is done, as soon as everybody has equally many.
        if (people[0].Used < 2 || people.Any(p => p.Used != people[0].Used))
        {
            string kind = people.All(p => p.Used == 0) ? "result.none" : people.All(p => p.Used == 1) ? "result.one" : "result.photos";
            return new Failure(StudyInputFailures.NotReady, KeptStudyTexts.Get(kind), KeptStudyTexts.Get(kind == "result.photos" ? "result.photosHint" : "result.twoHint"));
        }

        return StudyReadings.Of(photos);
    }

    private static StudyStanding OfPulses(KeptStudy study)
    {
        StudySetup setup = study.Setup;
        Failure? failure = null;
        PulseMarks? marks = study.Readings is { } table
            ? ReadingsFile.Pulses(Encoding.UTF8.GetBytes(table.Text)).TryGet(out PulseMarks? read, out failure) ? read : null
            : RunScatter.FromMarks([.. study.Photos.Where(p => p.Marks is not null).Select(p => new StudyPhoto("", p.Name, p.Called, p.Marks!))]);
        int pulses = marks?.All.Count ?? 0;
        StudyStanding standing = new([], pulses, study.Readings is null ? Math.Max(0, setup.Count - pulses) : 0);
        if (marks is null || !RunScatter.Run(marks, setup.Path, RunScatter.UsualWidth).TryGet(out ScatterAnswer? answer, out failure))
            return standing with { NotYet = failure };
        return standing with { Scatter = answer };
    }
}

/// <summary>How far one person or phone is.</summary>
/// <param name="Used">Photos that are used.</param>
/// <param name="Missing">Photos that the plan still asks for.</param>
public sealed record PersonStanding(string Name, int Used, int Missing);
