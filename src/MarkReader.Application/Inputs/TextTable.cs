using MarkReader.Application.Texts;
using MarkReader.Quantities;

namespace MarkReader.Application.Inputs;

/// <summary>
/// A table of text: the first line names the columns, in any order and with others beside them, then one line for each row.
/// Columns apart by commas, with points before decimals, or by semicolons or tabs, with points or commas.
/// </summary>
internal sealed class TextTable
{
    private static string Decimals => InputTexts.Get("textTable.writePointBeforeDecimalsOr");

    private static readonly char[] s_separators = [';', '\t', ','];

    private readonly FailureCode _unreadable;
    private readonly char _separator;
    private readonly Dictionary<string, int> _places;

    private TextTable(FailureCode unreadable, char separator, Dictionary<string, int> places, IReadOnlyList<Row> rows) => (_unreadable, _separator, _places, Rows) = (unreadable, separator, places, rows);

    public IReadOnlyList<Row> Rows { get; }

    public bool Has(string column) => _places.ContainsKey(column);

    public string Text(Row row, string column) => row.Fields[_places[column]];

    /// <summary>The number in a column.</summary>
    public Outcome<Number> Number(Row row, string column)
    {
        string text = Text(row, column);
        // Where commas part nothing they stand before decimals, also before three.
        return NumberText.Read(_separator == ',' ? text : text.Replace(',', '.')).TryGet(out Number? number, out _)
            ? number
            : new Failure(_unreadable, InputTexts.Word("textTable.notNumber", row.Name, column, ListText.Shown(text)), Decimals);
    }

    /// <summary>The table in a text, whose refusals have the code <paramref name="unreadable"/>.</summary>
    /// <param name="required">Columns that must be there; what stands behind a stroke (u/mm) is not part of a name.</param>
    /// <param name="optional">Columns that may be there.</param>
    public static Outcome<TextTable> Read(string text, FailureCode unreadable, IReadOnlyList<string> required, params IReadOnlyList<string> optional)
    {
        (int Number, string Text)[] lines = [.. text.ReplaceLineEndings("\n").Split('\n').Select((line, i) => (i + 1, line)).Where(line => !IsBlank(line.line))];
        // A file of nothing but separators.
        if (lines.Length == 0)
            return new TextTable(unreadable, ',', [], []);
        char separator = s_separators.FirstOrDefault(c => lines[0].Text.Contains(c, StringComparison.Ordinal), ',');
        string[] names = [.. Fields(lines[0].Text, separator).Select(n => n.Split('/')[0].Trim())];
        Dictionary<string, int> places = [];
        foreach (string column in required.Concat(optional))
        {
            int place = Array.FindIndex(names, n => n.Equals(column, StringComparison.OrdinalIgnoreCase));
            if (place >= 0)
                places.Add(column, place);
            else if (required.Contains(column))
                return new Failure(unreadable, InputTexts.Word("textTable.firstLineDoesNotName", column), InputTexts.Word("textTable.beginWithLine", string.Join(',', required)));
        }

        List<Row> rows = [];
        foreach ((int number, string line) in lines.Skip(1))
        {
            string[] fields = Fields(line, separator);
            if (fields.Length != names.Length)
                return new Failure(unreadable, InputTexts.Word("textTable.lineHasFieldsAndFirst", number, fields.Length, names.Length), Decimals);
            rows.Add(new(InputTexts.Say("textTable.line", number), fields));
        }

        return new TextTable(unreadable, separator, places, rows);
    }

    private static string[] Fields(string line, char separator) => [.. line.Split(separator).Select(f => f.Trim().Trim('"').Trim())];

    // Spreadsheets write separators for empty rows, too.
    private static bool IsBlank(string line) => line.All(c => char.IsWhiteSpace(c) || c is ';' or ',');

    /// <param name="Name">As messages call it.</param>
    internal sealed record Row(string Name, IReadOnlyList<string> Fields);
}
