using MarkReader.Application.Studies;
using MarkReader.Quantities;

namespace MarkReader.Application.Tests.Studies;

/// <summary>Photos of the same pulses are told from photos of pulses of their own.</summary>
public sealed class SamePulsesTests
{
    private const double Read = 0.01;

    [Fact]
    public void Two_photos_of_the_same_pulses_are_named_with_what_to_do()
    {
        CardPoint[] pulses = [new(0.6, -1.1), new(-0.9, 0.4), new(1.3, 0.8)];
        Random random = new(1);
        StudyPhoto[] photos = [Photo("a.jpg", pulses, random), Photo("b.jpg", [new(-1.2, -0.3), new(0.2, 1.5)], random), Photo("c.jpg", pulses, random)];
        string[] notes = [.. ScatterWords.Notes(Answer(photos))];
        Assert.Contains("'a.jpg' and 'c.jpg' show 3 marks at the same places: probably the same pulses, which then count twice.", notes);
        Assert.Contains(notes, n => n.StartsWith("Give one photo of each pulse", StringComparison.Ordinal));
        Assert.DoesNotContain(notes, n => n.Contains("b.jpg", StringComparison.Ordinal));
    }

    /// <summary>The second photo shows the marks of the first beside a new one, the third those of the second.</summary>
    [Fact]
    public void A_card_that_is_photographed_after_every_pulse_is_told()
    {
        CardPoint[] pulses = [new(0.6, -1.1), new(-0.9, 0.4), new(1.3, 0.8), new(-0.4, -1.3)];
        Random random = new(2);
        StudyPhoto[] photos = [.. Enumerable.Range(1, 4).Select(n => Photo($"{n}.jpg", pulses[..n], random))];
        Assert.Equal(
            ["'2.jpg' and '3.jpg' show 2 marks", "'2.jpg' and '4.jpg' show 2 marks", "'3.jpg' and '4.jpg' show 3 marks"],
            Same(photos).Select(n => n.Split(" at the same places")[0]));
    }

    /// <summary>Pulses of their own, in several amounts and scatters down to what they are read with, give a false alarm no more often than is stated.</summary>
    [Fact]
    public void Pulses_of_their_own_are_hardly_ever_taken_for_the_same()
    {
        Random random = new(3);
        int alarms = 0, runs = 0;
        foreach (double scatter in (double[])[0.01, 0.03, 0.1, 1])
        {
            foreach ((int photos, int marks) in ((int, int)[])[(2, 2), (3, 2), (12, 2), (4, 3), (12, 1)])
            {
                for (int run = 0; run < 200; run++, runs++)
                {
                    StudyPhoto[] all = [.. Enumerable.Range(0, photos).Select(i => Photo($"{i}", [.. Enumerable.Range(0, marks).Select(_ => new CardPoint(scatter * Normal(random), scatter * Normal(random)))], random))];
                    alarms += Same(all).Length > 0 ? 1 : 0;
                }
            }
        }

        Assert.InRange(alarms, 0, 0.01 * runs);
    }

    private static ScatterAnswer Answer(StudyPhoto[] photos) => RunScatter.Run(RunScatter.FromMarks(photos), null, RunScatter.UsualWidth).ValueOrThrow();

    private static string[] Same(StudyPhoto[] photos) => [.. RunScatter.FromMarks(photos).Notes.Where(n => n.Contains("probably the same pulses", StringComparison.Ordinal))];

    private static StudyPhoto Photo(string name, CardPoint[] pulses, Random random)
    {
        Covariance2 own = Covariance2.Isotropic(Read);
        return new("", name, $"'{name}'", [.. pulses.Select(p => new StudyMark(new(p + new CardVector(Read * Normal(random), Read * Normal(random)), own), own, Covariance2.Isotropic(0)))]);
    }

    private static double Normal(Random random) => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
