using System.Text;
using MarkReader.Application.Inputs;
using MarkReader.Quantities;

namespace MarkReader.Application.Studies;

/// <summary>The people that a table names, as the plan calls them; capitals and blanks make no other name.</summary>
internal static class PlanNames
{
    private const int MostShown = 4;

    /// <summary>The readings under the plan's names; refused when the table names somebody who is not in the plan.</summary>
    public static Outcome<StudyReadings> Match(StudyReadings readings, IReadOnlyList<string> people)
    {
        string? Named(string name) => people.FirstOrDefault(p => p == name) ?? people.FirstOrDefault(p => Plain(p) == Plain(name));
        Dictionary<string, string?> names = readings.All.Select(r => r.Operator).Distinct().ToDictionary(name => name, Named);
        string[] unknown = [.. names.Where(n => n.Value is null).Select(n => n.Key)];
        return unknown.Length == 0
            ? readings with { All = [.. readings.All.Select(r => r with { Operator = names[r.Operator]! })] }
            : new Failure(StudyInputFailures.PersonUnknown, KeptStudyTexts.Word(unknown.Length == 1 ? "readings.person" : "readings.people", Shown(unknown)), KeptStudyTexts.Word("readings.personHint", Shown(people)));
    }

    private static string Plain(string name) => string.Join(' ', name.Normalize(NormalizationForm.FormKC).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)).ToUpperInvariant();

    private static string Shown(IReadOnlyList<string> names) => string.Join(", ", names.Take(MostShown).Select(n => $"'{ListText.Shown(n)}'")) + (names.Count > MostShown ? ", …" : "");
}
