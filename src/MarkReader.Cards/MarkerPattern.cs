namespace MarkReader.Cards;

/// <summary>The cells of a square marker from a public dictionary, without the black border of one cell.</summary>
public sealed class MarkerPattern
{
    private readonly bool[] _white;

    /// <exception cref="ArgumentException">The rows are not <paramref name="cells"/> words of <paramref name="cells"/> digits 0 (black) or 1 (white).</exception>
    public MarkerPattern(int cells, IReadOnlyList<string> rows)
    {
        if (rows.Count != cells || rows.Any(r => r.Length != cells || r.Any(c => c is not ('0' or '1'))))
            throw new ArgumentException($"A marker needs {cells} rows of {cells} digits 0 or 1.", nameof(rows));
        Cells = cells;
        _white = [.. rows.SelectMany(r => r.Select(c => c == '1'))];
    }

    /// <summary>Cells on a side, without the border.</summary>
    public int Cells { get; }

    /// <summary>Cells on a side, with the border.</summary>
    public int CellsWithBorder => Cells + 2;

    /// <summary>Whether a cell counted with the border, from the upper left, is white.</summary>
    public bool IsWhite(int column, int row) =>
        column >= 1 && column <= Cells && row >= 1 && row <= Cells && _white[((row - 1) * Cells) + column - 1];
}
