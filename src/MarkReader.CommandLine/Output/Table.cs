using System.Text;

namespace MarkReader.CommandLine.Output;

/// <summary>Plain columns for a terminal: the first left-aligned, the others right-aligned.</summary>
internal sealed class Table(params string[] heads)
{
    private readonly List<string[]> _rows = [heads];

    public void Add(params string[] cells) => _rows.Add(cells);

    public override string ToString()
    {
        int[] widths = [.. Enumerable.Range(0, heads.Length).Select(i => _rows.Max(r => r[i].Length))];
        StringBuilder text = new();
        foreach (string[] row in _rows)
        {
            IEnumerable<string> cells = row.Select((cell, i) => i == 0 ? cell.PadRight(widths[0]) : cell.PadLeft(widths[i]));
            text.AppendLine(string.Join("  ", cells).TrimEnd());
        }

        return text.ToString().TrimEnd();
    }
}
