using MarkReader.Imaging.Rectification;
using MarkReader.Quantities;

namespace MarkReader.Imaging.Tests.Support;

/// <summary>Zones and burns given by formulas.</summary>
internal static class Burns
{
    private static readonly ZoneGrid s_grid = new(10, 320);

    /// <summary>A map of 20 mm with 16 pixels a millimetre, filled from a function of u and v.</summary>
    public static ZoneMap Map(Func<double, double, double> darkness)
    {
        float[] values = new float[s_grid.Size * s_grid.Size];
        for (int y = 0; y < s_grid.Size; y++)
        {
            for (int x = 0; x < s_grid.Size; x++)
            {
                CardPoint p = s_grid.ToCard(x, y);
                values[(y * s_grid.Size) + x] = (float)darkness(p.U, p.V);
            }
        }

        return new(s_grid, values);
    }

    /// <summary>Darkening at a radius in units of the mark's radius, edges some 0.1 radius wide.</summary>
    public static double Darkness(string profile, double r) => profile switch
    {
        "disc" => 0.9 * Step(r, 1),
        "halo" => (0.6 * Step(r, 1)) + (0.3 * Math.Exp(-r * r / 0.8)),
        "ring" => 0.8 * (Step(r, 1) - (0.6 * Step(r, 0.5))),
        _ => 0.9 * (Step(r, 1) - (1.3 * Step(r, 0.6))),
    };

    public static double Step(double r, double radius) => 1 / (1 + Math.Exp((r - radius) / 0.05));

    public static double Normal(Random random) => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
