using System.Text;

namespace MarkReader.Application.Tests.Records;

/// <summary>Reads a table as RFC 4180 has it.</summary>
internal static class CsvRows
{
    public static List<string[]> Read(string text)
    {
        List<string[]> rows = [];
        List<string> row = [];
        StringBuilder cell = new();
        bool quoted = false;
        for (int i = 0; i < text.Length; i++)
        {
            char c = text[i];
            if (quoted && c == '"' && i + 1 < text.Length && text[i + 1] == '"')
                cell.Append(text[++i]);
            else if (c == '"')
                quoted = !quoted;
            else if (!quoted && (c == ',' || c == '\n'))
            {
                row.Add(cell.ToString());
                cell.Clear();
                if (c == '\n')
                {
                    rows.Add([.. row]);
                    row.Clear();
                }
            }
            else if (quoted || c != '\r')
                cell.Append(c);
        }

        Assert.False(quoted);
        Assert.Empty(row);
        return rows;
    }
}
