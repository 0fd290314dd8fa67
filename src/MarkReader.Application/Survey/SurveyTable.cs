using MarkReader.Alignment.Survey;
using MarkReader.Application.Inputs;
using MarkReader.Quantities;

namespace MarkReader.Application.Survey;

/// <summary>
/// A survey as a table of text: the first line names the columns x, y, u, v and uncertainty, in any order and with others beside them, then one line for each mark.
/// Columns apart by commas, with points before decimals, or by semicolons or tabs, with points or commas.
/// </summary>
internal static class SurveyTable
{
    private const string FirstLine = "begin with the line x,y,u,v,uncertainty";
    private const string Decimals = "write a point before decimals, or put semicolons between the columns";

    private static readonly char[] s_separators = [';', '\t', ','];
    private static readonly string[] s_columns = ["x", "y", "u", "v", "uncertainty"];

    public static Outcome<SurveyMarks> Read(string text)
    {
        (int Number, string Text)[] lines = [.. text.ReplaceLineEndings("\n").Split('\n').Select((line, i) => (i + 1, line)).Where(line => !IsBlank(line.line))];
        // A file of nothing but separators.
        if (lines.Length == 0)
            return new SurveyMarks([]);
        char separator = s_separators.FirstOrDefault(c => lines[0].Text.Contains(c, StringComparison.Ordinal), ',');
        string[] names = [.. Fields(lines[0].Text, separator).Select(n => n.Split('/')[0].Trim())];
        int[] places = [.. s_columns.Select(column => Array.FindIndex(names, n => n.Equals(column, StringComparison.OrdinalIgnoreCase)))];
        if (Array.IndexOf(places, -1) is >= 0 and int missing)
            return SurveyFile.Unreadable($"the first line does not name the column {s_columns[missing]}", FirstLine);
        List<SurveyMark> marks = [];
        foreach ((int number, string line) in lines.Skip(1))
        {
            string[] fields = Fields(line, separator);
            if (fields.Length != names.Length)
                return SurveyFile.Unreadable($"line {number} has {fields.Length} fields and the first line {names.Length}", Decimals);
            if (!Mark($"line {number}", [.. places.Select(p => fields[p])], separator).TryGet(out SurveyMark? mark, out Failure? failure))
                return failure;
            marks.Add(mark);
        }

        return new SurveyMarks(marks);
    }

    private static Outcome<SurveyMark> Mark(string where, string[] fields, char separator)
    {
        double[] numbers = new double[fields.Length];
        for (int i = 0; i < fields.Length; i++)
        {
            // Where commas part nothing they stand before decimals, also before three.
            string field = separator == ',' ? fields[i] : fields[i].Replace(',', '.');
            if (!NumberText.Read(field).TryGet(out Number? number, out _))
                return SurveyFile.Unreadable($"{where}: {s_columns[i]} '{ListText.Shown(fields[i])}' is not a number", Decimals);
            numbers[i] = number.Value;
        }

        return SurveyFile.Mark(where, numbers);
    }

    private static string[] Fields(string line, char separator) => [.. line.Split(separator).Select(f => f.Trim().Trim('"').Trim())];

    // Spreadsheets write separators for empty rows, too.
    private static bool IsBlank(string line) => line.All(c => char.IsWhiteSpace(c) || c is ';' or ',');
}
