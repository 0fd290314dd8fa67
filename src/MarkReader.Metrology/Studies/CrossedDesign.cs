using System.Globalization;
using MarkReader.Quantities;

namespace MarkReader.Metrology.Studies;

/// <summary>Readings of every part by every operator, equally often (a balanced crossed design).</summary>
public sealed class CrossedDesign
{
    /// <summary>Most readings of a study.</summary>
    public const int MostReadings = 10_000;

    private const string Complete = "measure every part equally often with every operator, or leave out the part or operator that is not complete";

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
            return new Failure(StudyFailures.ReadingInvalid, $"the study has more than {MostReadings} readings", "split it");
        if (readings.FirstOrDefault(r => !double.IsFinite(r.Value)) is { } odd)
            return new Failure(StudyFailures.ReadingInvalid, $"{Place(odd)} is not a finite number", "give every reading as a number in mm");
        string[] parts = [.. readings.Select(r => r.Part).Distinct()], operators = [.. readings.Select(r => r.Operator).Distinct()];
        if (parts.Length < 2 || operators.Length < 2)
            return new Failure(StudyFailures.TooSmall, $"the study has {Count(parts.Length, "part")} and {Count(operators.Length, "operator")}", "take at least two parts (marks) and two operators (people or phones)");
        if (readings.GroupBy(r => (r.Part, r.Operator, r.Repeat)).FirstOrDefault(g => g.Skip(1).Any()) is { } twice)
            return new Failure(StudyFailures.Repeated, $"{Place(twice.First())} is there twice", "number the repeats of one operator and part");
        ILookup<(string, string), Reading> cells = readings.ToLookup(r => (r.Part, r.Operator));
        int repeats = cells[(parts[0], operators[0])].Count();
        foreach (string part in parts)
        {
            foreach (string who in operators)
            {
                int count = cells[(part, who)].Count();
                if (count != repeats)
                    return new Failure(StudyFailures.Unbalanced, $"part '{part}' was measured {Times(count)} by operator '{who}' and part '{parts[0]}' {Times(repeats)} by '{operators[0]}'", Complete);
            }
        }

        if (repeats < 2)
            return new Failure(StudyFailures.TooSmall, "every part was measured only once by an operator", "repeat each measurement at least once");
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
                return new Failure(StudyFailures.Unbalanced, $"operator '{operators[j]}' has {names.Length} photos, but {Times(repeats)} a reading of each part", "read every part in every photo");
            for (int i = 0; i < parts.Length; i++)
            {
                Reading[] cell = [.. cells[(parts[i], operators[j])].OrderBy(r => Array.IndexOf(names, r.Repeat))];
                for (int k = 0; k < repeats; k++)
                    values[i, j, k] = cell[k].Value;
            }
        }

        return new CrossedDesign(parts, operators, values);
    }

    private static string Place(Reading r) => $"part '{r.Part}', operator '{r.Operator}', repeat '{r.Repeat}'";

    private static string Times(int count) => count == 1 ? "once" : string.Create(CultureInfo.InvariantCulture, $"{count} times");

    private static string Count(int count, string noun) => $"{count} {noun}{(count == 1 ? "" : "s")}";
}
