using MarkReader.Rendering.Specs;

namespace MarkReader.Rendering.Surfaces;

/// <summary>A pen line: multiplies what is under it.</summary>
internal sealed class Pen
{
    private const double Soft = 0.05;
    private readonly PenSpec _spec;
    private readonly Rgb _ink;
    private readonly (double Left, double Right, double Bottom, double Top) _box;

    public Pen(PenSpec spec)
    {
        _spec = spec;
        _ink = spec.Colour switch
        {
            PenColour.Blue => new(0.08f, 0.12f, 0.45f),
            PenColour.Black => new(0.07f, 0.07f, 0.075f),
            PenColour.Red => new(0.6f, 0.07f, 0.08f),
            _ => throw new ArgumentOutOfRangeException(nameof(spec)),
        };
        double reach = (spec.Width / 2) + (4 * Soft);
        _box = (spec.Points.Min(p => p.U) - reach, spec.Points.Max(p => p.U) + reach, spec.Points.Min(p => p.V) - reach, spec.Points.Max(p => p.V) + reach);
    }

    public bool IsNear(double u, double v, double distance) =>
        u > _box.Left - distance && u < _box.Right + distance && v > _box.Bottom - distance && v < _box.Top + distance;

    public void Apply(double u, double v, ref Rgb surface)
    {
        if (u < _box.Left || u > _box.Right || v < _box.Bottom || v > _box.Top)
            return;
        double nearest = double.MaxValue;
        for (int i = 0; i + 1 < _spec.Points.Count; i++)
            nearest = Math.Min(nearest, Distance(u, v, _spec.Points[i], _spec.Points[i + 1]));
        float share = (float)Normal.Distribution(((_spec.Width / 2) - nearest) / Soft);
        if (share > 1e-4f)
            surface *= Rgb.Mix(new(1, 1, 1), _ink, share);
    }

    private static double Distance(double u, double v, (double U, double V) from, (double U, double V) to)
    {
        double du = to.U - from.U;
        double dv = to.V - from.V;
        double t = Math.Clamp((((u - from.U) * du) + ((v - from.V) * dv)) / Math.Max(1e-12, (du * du) + (dv * dv)), 0, 1);
        double x = u - from.U - (t * du);
        double y = v - from.V - (t * dv);
        return Math.Sqrt((x * x) + (y * y));
    }
}
