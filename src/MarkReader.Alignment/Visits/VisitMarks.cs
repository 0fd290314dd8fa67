using MarkReader.Alignment.Screws;
using MarkReader.Alignment.Survey;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Visits;

/// <summary>The marks of a visit as they stand after its events.</summary>
/// <param name="Legs">By the leg's name, in the order of time; survey marks that continue leg 2 are among them.</param>
/// <param name="Survey">The survey marks that count for the spread over the bed.</param>
/// <param name="Steady">Those that tell where the steady mark is: after the target was last moved, or all.</param>
public sealed record VisitMarks(IReadOnlyDictionary<string, IReadOnlyList<LegMark>> Legs, IReadOnlyList<SurveyMark> Survey, IReadOnlyList<SurveyMark> Steady)
{
    /// <param name="setup">A machine on which advice was given.</param>
    /// <param name="events">Events on which advice was given.</param>
    public static VisitMarks Of(VisitSetup setup, IReadOnlyList<VisitEvent> events)
    {
        VisitHistory history = VisitHistory.Of(setup, events);
        Dictionary<MeasuredPoint, int> numbers = new(ReferenceEqualityComparer.Instance);
        foreach (MeasuredPoint at in events.Select(Mark).OfType<MeasuredPoint>())
            numbers.TryAdd(at, numbers.Count + 1);
        return new(setup.Legs.ToDictionary(l => l.Name, l => (IReadOnlyList<LegMark>)Leg(history.Leg(l.Name), numbers)), [.. history.Survey], [.. history.Steady])
        {
            Numbers = numbers,
        };
    }

    private Dictionary<MeasuredPoint, int> Numbers { get; init; } = [];

    /// <summary>Counts the marks of the visit from 1, whatever target they are on.</summary>
    public int NumberOf(SurveyMark mark) => Numbers[mark.Mark];

    private static MeasuredPoint? Mark(VisitEvent e) => e switch
    {
        VisitEvent.Mark mark => mark.At,
        VisitEvent.Survey survey => survey.Seen.Mark,
        _ => null,
    };

    private static List<LegMark> Leg(IReadOnlyList<LegEvent> events, Dictionary<MeasuredPoint, int> numbers)
    {
        int changes = events.Count(e => e is not LegEvent.Mark), begun = events.ToList().FindLastIndex(e => e is LegEvent.Disturbed);
        (int since, List<LegMark> marks) = (0, []);
        for (int i = 0; i < events.Count; i++)
        {
            if (events[i] is LegEvent.Mark mark)
                marks.Add(new(numbers[mark.At], mark.Path, mark.At, since, changes == since, i > begun));
            else
                since++;
        }

        return marks;
    }
}

/// <summary>A mark of a leg.</summary>
/// <param name="Number">Counts the marks of the visit from 1, whatever target they are on.</param>
/// <param name="Path">Path length of its station, mm.</param>
/// <param name="At">In the card frame on the tape.</param>
/// <param name="Changes">How often something was changed on the leg before: marks with the same number lie on one beam.</param>
/// <param name="Counts">Whether the beam runs now as it did then: nothing was turned or disturbed since.</param>
/// <param name="IsOfThisRound">Whether nothing but the leg's own screws has moved since: its distance from the aim point can be compared.</param>
public sealed record LegMark(int Number, double Path, MeasuredPoint At, int Changes, bool Counts, bool IsOfThisRound);
