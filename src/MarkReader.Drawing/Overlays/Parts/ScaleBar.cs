using MarkReader.Quantities;

namespace MarkReader.Drawing.Overlays.Parts;

/// <summary>A bar of known length lying in the card's plane along u, with ticks.</summary>
/// <param name="Words">Its length: 10 mm, 1/2 in.</param>
/// <param name="Middle">Its middle in the photo, for the label.</param>
internal sealed record ScaleBar(string Words, PixelPoint Middle, PixelBox Box, IReadOnlyList<OverlayPrimitive> Primitives);

/// <summary>Places a scale bar at an edge of the free zone, away from the symbols.</summary>
internal sealed class ScaleBarPlacer(CardSight sight, Pen pen)
{
    private const double LongestShare = 0.42, LongestInchShare = 0.49; // of the zone's side; half an inch on the small card
    private const double TickDistance = 5; // CSS px, the least
    private const double TickHeight = 6; // CSS px
    private static readonly double[] s_steps = [1, 5, 10, 20];
    private static readonly double[] s_inchSteps = [.. new[] { 16, 8, 4, 2, 1 }.Select(Part)];
    private static readonly (double Length, string Words)[] s_lengths = [.. new[] { 20, 10, 5, 2, 1 }.Select(l => ((double)l, $"{l} mm"))];
    private static readonly (double Length, string Words)[] s_inches = [.. new[] { 1, 2, 4, 8, 16 }.Select(n => (Part(n), n == 1 ? "1 in" : $"1/{n} in"))];

    /// <summary>The bar, or null when no place for it lies in the frame.</summary>
    public ScaleBar? Place(double zoneSide, IReadOnlyList<Symbol> symbols, bool inches)
    {
        (double Length, string Words)[] lengths = inches ? s_inches : s_lengths;
        (double length, string words) = lengths.FirstOrDefault(l => l.Length <= (inches ? LongestInchShare : LongestShare) * zoneSide, lengths[^1]);
        (double Clear, CardPoint Start)? best = null;
        foreach (CardPoint start in Starts(zoneSide, length))
        {
            CardPoint end = start + new CardVector(length, 0);
            if (sight.FindInFrame(start) is null || sight.FindInFrame(end) is null)
                continue;
            double clear = symbols.Select(s => Distance(s.Point, start, length) - s.Millimetres).DefaultIfEmpty(double.MaxValue).Min();
            double enough = Math.Min(clear, length / 2); // a clear first place is as good as any
            if (best is null || enough > best.Value.Clear + 1e-9)
                best = (enough, start);
        }

        return best is null ? null : Draw(best.Value.Start, length, words, inches ? s_inchSteps : s_steps);
    }

    /// <summary>Lower edge first, left and right, then the upper edge, then places further in, for a card that is partly in the picture.</summary>
    private static IEnumerable<CardPoint> Starts(double zoneSide, double length)
    {
        double half = zoneSide / 2;
        double inset = 0.05 * zoneSide;
        foreach (double v in new[] { -half + inset, half - inset, -half / 2, half / 2, 0 })
        {
            yield return new(-half + inset, v);
            yield return new(half - inset - length, v);
        }
    }

    private ScaleBar Draw(CardPoint start, double length, string words, double[] steps)
    {
        double scale = sight.Scale(start);
        double step = steps.First(s => s * scale >= TickDistance * pen.Css || s >= length);
        double height = TickHeight * pen.Css / scale;
        List<OverlayPrimitive> drawn = [];
        for (double at = 0; at <= length + 1e-9; at += step)
        {
            bool end = at < 1e-9 || at > length - 1e-9;
            CardPoint foot = start + new CardVector(at, 0);
            CardPoint tip = foot + new CardVector(0, end ? 1.4 * height : height);
            drawn.Add(new OverlayLine("scale", sight.Trace(start, [foot, tip]), false, pen.Plain(OverlayColours.Plain)));
        }

        PixelPoint[] bar = [.. sight.Trace(start, [start, start + new CardVector(length, 0)])];
        drawn.Add(new OverlayLine("scale", bar, false, pen.Plain(OverlayColours.Plain)));
        PixelBox box = PixelBox.Around(drawn.OfType<OverlayLine>().SelectMany(l => l.Points)).Grown(2 * pen.Css);
        return new(words, sight.Trace(start, [start + new CardVector(length / 2, 0)])[0], box, drawn);
    }

    private static double Part(int ofInch) => Length.FromInches(1.0 / ofInch).Millimetres;

    private static double Distance(CardPoint point, CardPoint start, double length) =>
        point.DistanceTo(new(Math.Clamp(point.U, start.U, start.U + length), start.V));
}
