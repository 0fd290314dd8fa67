using MarkReader.Drawing.Overlays;
using MarkReader.Quantities;
using SkiaSharp;

namespace MarkReader.Drawing.Pictures.Parts;

/// <summary>The grid of a target's plan, in round parts of a millimetre or an inch, with numbers at every second line.</summary>
internal static class PlanGrid
{
    private const double Inch = Quantities.Length.MillimetresPerInch, LeastPixels = 30;

    /// <summary>Distance of two lines, mm.</summary>
    public static double Step(CardPlane plane, PictureNumbers numbers)
    {
        double unit = Unit(numbers);
        return unit * RoundStep.AtLeast(LeastPixels / plane.PixelsPerMm / unit);
    }

    public static double Draw(Ink ink, CardPlane plane, PixelBox room, PictureNumbers numbers)
    {
        double step = Step(plane, numbers);
        double half = room.Width / 2 / plane.PixelsPerMm;
        foreach (int i in Lines(plane.Middle.U, half, step))
        {
            double x = plane.Place(new(i * step, 0)).X;
            ink.Line(new(x, room.Top), new(x, room.Bottom), Of(i));
            if (i % 2 == 0 && x < room.Right - 8)
                ink.Text(Number(i, step, numbers), new(x, room.Bottom + 14), new(Ink.Grey, Align: SKTextAlign.Center));
        }

        foreach (int i in Lines(plane.Middle.V, half, step))
        {
            double y = plane.Place(new(0, i * step)).Y;
            ink.Line(new(room.Left, y), new(room.Right, y), Of(i));
            // The lowest would stand on the first of the numbers below.
            if (i % 2 == 0 && y < room.Bottom - 10)
                ink.Text(Number(i, step, numbers), new(room.Left - 4, y + 4.5), new(Ink.Grey, Align: SKTextAlign.Right));
        }

        return step;
    }

    public static void Sign(Ink ink, PixelPoint at)
    {
        ink.Path(Signs.Square(at, 6), new(Ink.Pale, 1), closed: true);
        ink.Line(at + new PixelVector(-6, 0), at + new PixelVector(6, 0), new(Ink.Pale, 1));
        ink.Line(at + new PixelVector(0, -6), at + new PixelVector(0, 6), new(Ink.Pale, 1));
    }

    public static void Tolerance(Ink ink, PixelPoint at)
    {
        ink.Disc(at, 7, Ink.Clear(Ink.Green, 0.12));
        ink.Circle(at, 7, new(Ink.Green, 1));
    }

    private static double Unit(PictureNumbers numbers) => numbers.Inches ? Inch : 1;

    private static string Number(int i, double step, PictureNumbers numbers)
    {
        string text = numbers.Number(Math.Abs(i) * step / Unit(numbers));
        return i < 0 ? "\u2212" + text : text;
    }

    private static Stroke Of(int i) => i == 0 ? new(Ink.Pale, 1.4) : new(Ink.Faint, 1);

    private static IEnumerable<int> Lines(double middle, double half, double step)
    {
        for (int i = (int)Math.Ceiling((middle - half) / step); i <= (int)Math.Floor((middle + half) / step); i++)
            yield return i;
    }
}
