using MarkReader.Rendering.Specs;

namespace MarkReader.Rendering.Surfaces;

/// <summary>What a burn does to the surface under it: transmission by channel and, where it went through, a hole.</summary>
internal sealed class Burn
{
    // Pyrolysed cellulose takes blue first (brown), char takes all channels nearly alike.
    private static readonly Rgb s_char = new(0.92f, 1f, 1.06f);
    private static readonly Rgb s_brown = new(0.55f, 1f, 1.7f);
    private const float Floor = 0.03f;
    private readonly BurnSpec _spec;
    private readonly double _cos;
    private readonly double _sin;
    private readonly double _stainCos;
    private readonly double _stainSin;
    private readonly double _phase;
    private readonly int _seed;

    public Burn(BurnSpec spec, int seed)
    {
        _spec = spec;
        _seed = seed;
        (_sin, _cos) = Math.SinCos(spec.AxisDegrees * Math.PI / 180);
        (_stainSin, _stainCos) = Math.SinCos(spec.StainDegrees * Math.PI / 180);
        _phase = Noise.Hash(17, 3, seed) * Math.PI;
        Reach = Math.Max(spec.Radius + (7 * spec.EdgeWidth), 3.6 * spec.HaloRadius) * 1.05;
        if (spec.StainDensity > 0)
            Reach = Math.Max(Reach, spec.Radius + (5 * spec.StainLength));
    }

    public BurnSpec Spec => _spec;

    /// <summary>Beyond this distance (mm) the burn changes nothing.</summary>
    public double Reach { get; }

    public void Apply(double u, double v, ref Rgb surface, ref float hole)
    {
        double du = u - _spec.U;
        double dv = v - _spec.V;
        if (Math.Abs(du) > Reach || Math.Abs(dv) > Reach)
            return;
        double a = (du * _cos) + (dv * _sin);
        double b = ((dv * _cos) - (du * _sin)) / _spec.AxisRatio;
        double r = Math.Sqrt((a * a) + (b * b));
        if (_spec.Roughness > 0 && r > 1e-9)
        {
            double angle = Math.Atan2(b, a);
            r *= 1 + (_spec.Roughness * (Math.Sin((4 * angle) + _phase) + (0.7 * Math.Sin((6 * angle) + (2 * _phase))) + (0.5 * Math.Sin((10 * angle) - _phase))));
        }

        (double core, double halo, double open) = Profile(r);
        if (_spec.CharTexture > 0 && core > 0.01)
            core *= 1 + (_spec.CharTexture * Noise.Fractal(u * 2.6, v * 2.6, 3, _seed + 50));
        if (_spec.StainDensity > 0)
            halo += Stain(du, dv);
        surface *= Transmission(core, halo);
        hole = Math.Max(hole, (float)open);
    }

    /// <summary>What <see cref="BurnSize.Of"/> says, mm.</summary>
    public double DiameterAtHalfDepth()
    {
        const int Steps = 4000;
        double[] depth = [.. Enumerable.Range(0, Steps).Select(i => Depth(i * Reach / Steps))];
        double half = depth.Max() / 2;
        int last = Array.FindLastIndex(depth, d => d >= half);
        double equalArea = 2 * last * Reach / Steps * Math.Sqrt(_spec.AxisRatio);
        return equalArea;
    }

    private double Depth(double r)
    {
        (double core, double halo, _) = Profile(r);
        Rgb t = Transmission(core, halo);
        return 1 - ((0.299 * t.R) + (0.587 * t.G) + (0.114 * t.B));
    }

    private (double Core, double Halo, double Open) Profile(double r)
    {
        double core = _spec.Density * Normal.Distribution((_spec.Radius - r) / _spec.EdgeWidth);
        if (_spec.RingDepth > 0)
        {
            double inner = r / (_spec.RingRadius * _spec.Radius);
            core *= 1 - (_spec.RingDepth * Math.Exp(-Math.Pow(inner, 4)));
        }

        double h = r / _spec.HaloRadius;
        double halo = _spec.HaloDensity * Math.Exp(-h * h * h);
        double open = _spec.Hole == HoleKind.None ? 0 : Normal.Distribution(((_spec.HoleRadius * _spec.Radius) - r) / Math.Min(0.05, _spec.EdgeWidth));
        return (core, halo, open);
    }

    private double Stain(double du, double dv)
    {
        double along = (du * _stainCos) + (dv * _stainSin);
        double across = (dv * _stainCos) - (du * _stainSin);
        double r = _spec.Radius;
        double begin = Normal.Distribution((along - (0.3 * r)) / (0.45 * r));
        if (begin < 1e-4)
            return 0;
        double width = (0.8 * r) + (0.35 * Math.Max(0, along));
        double wisps = 1 + (0.35 * Noise.Fractal(along * 0.9, across * 1.6, 3, _seed));
        return _spec.StainDensity * begin * Math.Exp(-Math.Max(0, along) / _spec.StainLength) * Math.Exp(-across * across / (2 * width * width)) * wisps;
    }

    private Rgb Transmission(double core, double halo)
    {
        Rgb inner = Rgb.Mix(s_brown, s_char, (float)_spec.Charring);
        return new(Channel(core * inner.R, halo * s_brown.R), Channel(core * inner.G, halo * s_brown.G), Channel(core * inner.B, halo * s_brown.B));
    }

    private static float Channel(double core, double halo) => Floor + ((1 - Floor) * (float)Math.Exp(-core - halo));
}
