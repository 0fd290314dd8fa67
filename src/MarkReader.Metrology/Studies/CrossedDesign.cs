using MarkReader.Metrology.Texts;
using MarkReader.Quantities;

namespace MarkReader.Metrology.Studies;

/// <summary>Readings of every part by every operator, equally often (a balanced crossed design).</summary>
public sealed class CrossedDesign
{
    /// <summary>Most readings of a study.</summary>
    public const int MostReadings = 10_000;

    private static string Complete => MetrologyTexts.Get("crossedDesign.measureEveryPartEquallyOften");

    private readonly double[,,] _values;

    private CrossedDesign(IReadOnlyList<string> parts, IReadOnlyList<string> operators, double[,,] values) => (Parts, Operators, _values) = (parts, operators, values);

    /// <summary>Names in the order in which they first occur.</summary>
    public IReadOnlyList<string> Parts { get; }

    /// <summary>Names in the order in which they first occur.</summary>
    public IReadOnlyList<string> Operators { get; }

    /// <summary>How often each operator measured each part.</summary>
    public int Repeats => _values.GetLength(2);

    /// <summary>The reading with these places from 0; the repeats of one operator stand in the order of that operator's names for them.</summary>
    public double this[int part, int @operator, int repeat] => _values[part, @operator, repeat];

    /// <summary>The design of these readings.</summary>
    /// <param name="sameRepeats">Whether the repeats of one operator must be the same for all parts, as those of one photo are.</param>
    public static Outcome<CrossedDesign> Of(IReadOnlyList<Reading> readings, bool sameRepeats = false)
    {
        if (readings.Count > MostReadings)
            return new Failure(StudyFailures.ReadingInvalid, MetrologyTexts.Word("crossedDesign.studyHasMoreThanReadings", MostReadings), MetrologyTexts.Get("crossedDesign.split"));
        if (readings.FirstOrDefault(r => !double.IsFinite(r.Value)) is { } odd)
            return new Failure(StudyFailures.ReadingInvalid, MetrologyTexts.Word("crossedDesign.notFiniteNumber", Place(odd)), MetrologyTexts.Get("crossedDesign.giveEveryReadingAsNumber"));
        string[] parts = [.. readings.Select(r => r.Part).Distinct()], operators = [.. readings.Select(r => r.Operator).Distinct()];
        if (parts.Length < 2 || operators.Length < 2)
            return new Failure(StudyFailures.TooSmall, MetrologyTexts.Word("crossedDesign.partsAndOperators", parts.Length, operators.Length), MetrologyTexts.Get("crossedDesign.takeAtLeastTwoParts"));
        if (readings.GroupBy(r => (r.Part, r.Operator, r.Repeat)).FirstOrDefault(g => g.Skip(1).Any()) is { } twice)
            return new Failure(StudyFailures.Repeated, MetrologyTexts.Word("crossedDesign.thereTwice", Place(twice.First())), MetrologyTexts.Get("crossedDesign.numberRepeatsOneOperatorAnd"));
        ILookup<(string, string), Reading> cells = readings.ToLookup(r => (r.Part, r.Operator));
        int repeats = cells[(parts[0], operators[0])].Count();
        foreach (string part in parts)
        {
            foreach (string who in operators)
            {
                int count = cells[(part, who)].Count();
                if (count != repeats)
                    return new Failure(StudyFailures.Unbalanced, MetrologyTexts.Word("crossedDesign.partWasMeasuredByOperator", part, Times(count), who, parts[0], Times(repeats), operators[0]), Complete);
            }
        }

        if (repeats < 2)
            return new Failure(StudyFailures.TooSmall, MetrologyTexts.Get("crossedDesign.everyPartWasMeasuredOnly"), MetrologyTexts.Get("crossedDesign.repeatEachMeasurementAtLeast"));
        return Fill(readings, parts, operators, repeats, sameRepeats);
    }

    private static Outcome<CrossedDesign> Fill(IReadOnlyList<Reading> readings, string[] parts, string[] operators, int repeats, bool sameRepeats)
    {
        double[,,] values = new double[parts.Length, operators.Length, repeats];
        ILookup<(string, string), Reading> cells = readings.ToLookup(r => (r.Part, r.Operator));
        for (int j = 0; j < operators.Length; j++)
        {
            string[] names = [.. readings.Where(r => r.Operator == operators[j]).Select(r => r.Repeat).Distinct()];
            if (sameRepeats && names.Length != repeats)
                return new Failure(StudyFailures.Unbalanced, MetrologyTexts.Word("crossedDesign.operatorHasPhotosButReading", operators[j], names.Length, Times(repeats)), MetrologyTexts.Get("crossedDesign.readEveryPartInEvery"));
            for (int i = 0; i < parts.Length; i++)
            {
                Reading[] cell = [.. cells[(parts[i], operators[j])].OrderBy(r => Array.IndexOf(names, r.Repeat))];
                for (int k = 0; k < repeats; k++)
                    values[i, j, k] = cell[k].Value;
            }
        }

        return new CrossedDesign(parts, operators, values);
    }

    private static string Place(Reading r) => MetrologyTexts.Say("crossedDesign.partOperatorRepeat", r.Part, r.Operator, r.Repeat);

    private static string Times(int count) => count == 1 ? MetrologyTexts.Get("crossedDesign.once") : MetrologyTexts.Say("crossedDesign.times", count);
}
