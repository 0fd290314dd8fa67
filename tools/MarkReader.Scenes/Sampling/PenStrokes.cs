using MarkReader.Rendering.Sampling;
using MarkReader.Rendering.Specs;

namespace MarkReader.Scenes.Sampling;

/// <summary>Lines by hand: not quite straight.</summary>
internal static class PenStrokes
{
    private static readonly double[][][] s_letters =
    [
        [[-1, -1, 0, 1, 1, -1], [-0.5, -0.1, 0.5, -0.1]],
        [[-0.7, -1, -0.7, 1, 0.5, 0.7, 0.5, 0.2, -0.7, 0, 0.6, -0.3, 0.6, -0.8, -0.7, -1]],
        [[-0.8, -1, -0.8, 1, 0.8, -1, 0.8, 1]],
        [[0.8, 1, -0.8, 1, -0.8, -1], [-0.8, 0, 0.4, 0]],
        [[-0.3, 0.7, 0.1, 1, 0.1, -1]],
        [[-0.7, 0.7, 0, 1, 0.6, 0.5, -0.7, -1, 0.7, -1]],
    ];

    public static PenSpec Line(Random r, PenColour colour, double width, double u, double v)
    {
        double a = r.Between(0, Math.PI);
        double half = r.Between(3, 11);
        return Wobbly(r, colour, width, [(u - (half * Math.Cos(a)), v - (half * Math.Sin(a))), (u + (half * Math.Cos(a)), v + (half * Math.Sin(a)))]);
    }

    public static PenSpec[] Cross(Random r, PenColour colour, double width, double u, double v)
    {
        double half = r.Between(1.5, 4);
        double tilt = r.Between(-0.2, 0.2);
        (double c, double s) = (half * Math.Cos(tilt), half * Math.Sin(tilt));
        return
        [
            Wobbly(r, colour, width, [(u - c, v - s), (u + c, v + s)]),
            Wobbly(r, colour, width, [(u + s, v - c), (u - s, v + c)]),
        ];
    }

    public static PenSpec[] Letter(Random r, PenColour colour, double width, double u, double v)
    {
        double size = r.Between(1.2, 2.4);
        return [.. r.Pick(s_letters).Select(line => Wobbly(r, colour, width, [.. Enumerable.Range(0, line.Length / 2).Select(i => (u + (size * line[2 * i]), v + (size * line[(2 * i) + 1])))]))];
    }

    public static PenSpec Dot(PenColour colour, double width, double u, double v) => new(colour, width, [(u, v), (u + 0.01, v)]);

    private static PenSpec Wobbly(Random r, PenColour colour, double width, (double U, double V)[] points)
    {
        List<(double U, double V)> line = [points[0]];
        for (int i = 0; i + 1 < points.Length; i++)
        {
            for (int k = 1; k <= 4; k++)
            {
                double t = k / 4.0;
                line.Add((points[i].U + (t * (points[i + 1].U - points[i].U)) + r.Between(-0.08, 0.08), points[i].V + (t * (points[i + 1].V - points[i].V)) + r.Between(-0.08, 0.08)));
            }
        }

        return new(colour, width, line);
    }
}
