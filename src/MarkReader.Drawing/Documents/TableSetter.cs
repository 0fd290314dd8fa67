using SkiaSharp;

namespace MarkReader.Drawing.Documents;

/// <summary>Sets a table: columns as wide as their widest cell, those that wrap share what is left.</summary>
internal sealed class TableSetter
{
    private const double Gutter = 3.6, Above = 0.75, Narrowest = 22;
    private const int MostLines = 24;

    // A table with so few rows is not divided.
    private const int MostTogether = 12;

    private readonly PageFlow _flow;
    private readonly DocumentBlock.Table _table;
    private readonly double[] _widths, _lefts;
    private readonly bool _hasUnits;

    public TableSetter(PageFlow flow, DocumentBlock.Table table)
    {
        (_flow, _table) = (flow, table);
        _hasUnits = table.Columns.Any(c => c.Unit.Length > 0);
        _widths = Widths();
        _lefts = new double[_widths.Length];
        double x = PageFlow.Left;
        for (int i = 0; i < _widths.Length; i++)
        {
            _lefts[i] = x;
            x += _widths[i] + Gutter;
        }
    }

    private double HeadHeight => (_hasUnits ? 2 : 1) * Ink.Head.Leading + 1.6;

    private double CaptionHeight => _table.Caption.Length == 0 ? 0 : Ink.Strong.Leading + 1;

    /// <summary>What stays together at its beginning.</summary>
    public double Beginning => _table.Rows.Count <= MostTogether ? Math.Max(Start, Math.Min(_flow.Room / 2, CaptionHeight + HeadHeight + _table.Rows.Sum(r => Height(Lines(r))))) : Start;

    private double Start => CaptionHeight + HeadHeight + (_table.Rows.Count == 0 ? 0 : Height(Lines(_table.Rows[0])) + (_table.Rows.Count == 2 ? Height(Lines(_table.Rows[1])) : 0));

    public void Set()
    {
        _flow.Need(Beginning);
        if (_table.Caption.Length > 0)
            _flow.Put(CaptionHeight, (canvas, y) => Ink.Strong.Draw(canvas, _table.Caption, PageFlow.Left, y));
        Head();
        for (int i = 0; i < _table.Rows.Count; i++)
        {
            TableRow row = _table.Rows[i];
            IReadOnlyList<IReadOnlyList<string>> cells = Lines(row);
            double height = Height(cells);
            // The last row is not left alone on a page.
            double together = i == _table.Rows.Count - 2 ? height + Height(Lines(_table.Rows[i + 1])) : height;
            if (_flow.Need(together))
                Head();
            _flow.Put(height, (canvas, y) => Draw(canvas, y, height, cells, row.IsStruck));
        }
    }

    private void Head() => _flow.Put(HeadHeight, (canvas, y) =>
    {
        for (int i = 0; i < _widths.Length; i++)
        {
            TableColumn column = _table.Columns[i];
            Place(canvas, Ink.Head, column.Heading, i, y);
            Place(canvas, Ink.Small, column.Unit, i, y + Ink.Head.Leading);
        }

        _flow.Line(canvas, y + HeadHeight - 0.6, Ink.Black, 0.25);
    });

    private void Draw(SKCanvas canvas, double y, double height, IReadOnlyList<IReadOnlyList<string>> cells, bool struck)
    {
        Ink ink = struck ? Ink.Gone : Ink.Cell;
        for (int i = 0; i < cells.Count; i++)
        {
            for (int line = 0; line < cells[i].Count; line++)
            {
                double top = y + Above + (line * ink.Leading);
                Place(canvas, ink, cells[i][line], i, top);
                if (struck && cells[i][line].Length > 0)
                    Strike(canvas, ink, cells[i][line], i, top + (ink.Leading / 2));
            }
        }

        _flow.Line(canvas, y + height, Ink.Line, 0.12);
    }

    private void Strike(SKCanvas canvas, Ink ink, string text, int column, double y)
    {
        double width = ink.Width(text);
        double x = _table.Columns[column].IsNumber ? _lefts[column] + _widths[column] - width : _lefts[column];
        using SKPaint rule = PageFlow.Rule(Ink.Grey, 0.2);
        canvas.DrawLine((float)x, (float)y, (float)(x + width), (float)y, rule);
    }

    private void Place(SKCanvas canvas, Ink ink, string text, int column, double y)
    {
        bool right = _table.Columns[column].IsNumber;
        ink.Draw(canvas, text, right ? _lefts[column] + _widths[column] : _lefts[column], y, right ? SKTextAlign.Right : SKTextAlign.Left);
    }

    private IReadOnlyList<IReadOnlyList<string>> Lines(TableRow row) => [.. row.Cells.Select((cell, i) => Cut(Ink.Cell.Wrap(cell, _widths[i])))];

    private static IReadOnlyList<string> Cut(IReadOnlyList<string> lines) => lines.Count <= MostLines ? lines : [.. lines.Take(MostLines - 1), "…"];

    private static double Height(IReadOnlyList<IReadOnlyList<string>> cells) => (cells.Max(c => c.Count) * Ink.Cell.Leading) + (2 * Above);

    private double[] Widths()
    {
        double room = _flow.Width - (Gutter * (_table.Columns.Count - 1));
        double[] natural = [.. _table.Columns.Select((column, i) => Math.Max(
            Math.Max(Ink.Head.Width(column.Heading), Ink.Small.Width(column.Unit)),
            _table.Rows.Count == 0 ? 0 : _table.Rows.Max(r => Ink.Cell.Width(r.Cells[i]))) + 0.05)];
        int[] wrapping = [.. Enumerable.Range(0, natural.Length).Where(i => _table.Columns[i].Wraps)];
        double left = room - natural.Where((_, i) => !_table.Columns[i].Wraps).Sum();
        if (wrapping.Length == 0 || left < wrapping.Length * Narrowest)
            return natural.Sum() <= room ? natural : [.. natural.Select(w => w * room / natural.Sum())];
        // Each gets what it needs; when that is too much, in proportion to it, but no column less than the narrowest.
        double wanted = wrapping.Sum(i => natural[i]);
        if (wanted > left)
        {
            double share = (left - (wrapping.Length * Narrowest)) / wrapping.Sum(i => Math.Max(0, natural[i] - Narrowest));
            foreach (int i in wrapping)
                natural[i] = Math.Min(natural[i], Narrowest) + (share * Math.Max(0, natural[i] - Narrowest));
        }

        // A table is as wide as the page, so that the rules of all tables end alike.
        double rest = room - natural.Sum();
        if (rest > 0)
            natural[wrapping[^1]] += rest;
        return natural;
    }
}
