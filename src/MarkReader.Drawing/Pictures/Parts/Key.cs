using MarkReader.Quantities;

namespace MarkReader.Drawing.Pictures.Parts;

/// <summary>A sign of the picture and what it means.</summary>
internal sealed record KeyItem(Action<Ink, PixelPoint> Sign, string Text);

/// <summary>The signs of a picture in rows, each about 18 px wide with its words behind it.</summary>
internal sealed class Key(double width, IReadOnlyList<KeyItem> items)
{
    private const double Sign = 22, Gap = 12, Row = 18;

    public double Height => Row * (Places().Select(p => p.Row).DefaultIfEmpty(-1).Max() + 1);

    public void Draw(Ink ink, double left, double top)
    {
        foreach ((KeyItem item, double x, int row) in Places())
        {
            double y = top + (row * Row) + (Row / 2);
            item.Sign(ink, new(left + x + (Sign / 2) - 2, y));
            ink.Text(item.Text, new(left + x + Sign, y + 4.5), Letter.Plain);
        }
    }

    private IEnumerable<(KeyItem Item, double X, int Row)> Places()
    {
        (double x, int row) = (0, 0);
        foreach (KeyItem item in items)
        {
            double wide = Sign + Letter.Plain.Measure(item.Text);
            if (x > 0 && x + wide > width)
                (x, row) = (0, row + 1);
            yield return (item, x, row);
            x += wide + Gap;
        }
    }
}
