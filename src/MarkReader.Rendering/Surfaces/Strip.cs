using MarkReader.Rendering.Specs;

namespace MarkReader.Rendering.Surfaces;

/// <summary>A strip of tape with torn short ends.</summary>
internal sealed class Strip
{
    private readonly TapeSpec _spec;
    private readonly double _cos;
    private readonly double _sin;
    private readonly int _seed;

    public Strip(TapeSpec spec, int seed)
    {
        _spec = spec;
        _seed = seed;
        (_sin, _cos) = Math.SinCos(spec.TurnDegrees * Math.PI / 180);
    }

    public float Translucency => (float)_spec.Translucency;

    /// <summary>No part lies farther from the origin than this along either axis, mm.</summary>
    public double Reach => Math.Max(Math.Abs(_spec.U), Math.Abs(_spec.V))
        + (_spec.Length / 2 * Math.Max(Math.Abs(_cos), Math.Abs(_sin))) + (_spec.Width / 2 * Math.Max(Math.Abs(_cos), Math.Abs(_sin)));

    public (double Along, double Across) Local(double u, double v) =>
        (((u - _spec.U) * _cos) + ((v - _spec.V) * _sin), ((v - _spec.V) * _cos) - ((u - _spec.U) * _sin));

    /// <summary>Distance inside the strip's outline, mm; negative outside. The torn ends wander by some tenths of a millimetre.</summary>
    public double Inside(double u, double v)
    {
        (double along, double across) = Local(u, v);
        double side = (_spec.Width / 2) - Math.Abs(across);
        double end = (_spec.Length / 2) - Math.Abs(along);
        if (side < -2 || Math.Abs(end) > 2)
            return Math.Min(side, end);
        end += 0.35 * Noise.Fractal(across * 1.1, along > 0 ? 5.5 : 9.5, 3, _seed);
        return Math.Min(side, end);
    }

    public Rgb Albedo(double u, double v)
    {
        (double along, double across) = Local(u, v);
        return Textures.Tape(_spec.Material, along, across, _seed);
    }
}
