using MarkReader.Cards;
using MarkReader.Quantities;

namespace MarkReader.Rendering.Surfaces;

/// <summary>The few characters of the card's labels as thick strokes: close enough to print for a photo.</summary>
internal static class LabelStrokes
{
    /// <summary>Polylines in a box 0.6 wide and 1 high, origin at its lower left.</summary>
    private static readonly Dictionary<char, double[][]> s_glyphs = new()
    {
        ['0'] = [[0.1, 0.2, 0.1, 0.8, 0.3, 1, 0.5, 0.8, 0.5, 0.2, 0.3, 0, 0.1, 0.2]],
        ['1'] = [[0.1, 0.8, 0.3, 1, 0.3, 0]],
        ['2'] = [[0.1, 0.8, 0.3, 1, 0.5, 0.8, 0.5, 0.6, 0.1, 0, 0.5, 0]],
        ['4'] = [[0.45, 0, 0.45, 1, 0.05, 0.3, 0.6, 0.3]],
        ['m'] = [[0.05, 0, 0.05, 0.65, 0.3, 0.65, 0.3, 0], [0.3, 0.65, 0.55, 0.65, 0.55, 0]],
    };

    public static IEnumerable<IReadOnlyList<CardPoint>> Of(CardLabel label)
    {
        const double Advance = 0.75;
        const double HalfStroke = 0.07;
        (double sin, double cos) = Math.SinCos(label.TurnDegrees * Math.PI / 180);
        double start = -Advance * label.Text.Length / 2;
        for (int i = 0; i < label.Text.Length; i++)
        {
            if (!s_glyphs.TryGetValue(label.Text[i], out double[][]? lines))
                continue;
            foreach (double[] line in lines)
            {
                for (int k = 0; k + 3 < line.Length; k += 2)
                {
                    CardPoint from = Place(start + (i * Advance) + line[k], line[k + 1] - 0.5);
                    CardPoint to = Place(start + (i * Advance) + line[k + 2], line[k + 3] - 0.5);
                    CardVector along = to - from;
                    CardVector unit = (HalfStroke * label.Height / along.Magnitude) * along;
                    CardVector across = new(-unit.V, unit.U);
                    yield return [from - unit + across, to + unit + across, to + unit - across, from - unit - across];
                }
            }
        }

        CardPoint Place(double x, double y) => label.Centre + new CardVector(
            label.Height * ((x * cos) - (y * sin)), label.Height * ((x * sin) + (y * cos)));
    }
}
