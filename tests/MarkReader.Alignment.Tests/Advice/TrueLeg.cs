using MarkReader.Quantities;

namespace MarkReader.Alignment.Tests.Advice;

/// <summary>What a leg is drawn from; lengths in mm.</summary>
internal sealed record LegRanges
{
    public double Near { get; init; } = 80;
    public double Far { get; init; } = 480;
    public double IncidenceDegrees { get; init; }
    public bool ThreeScrews { get; init; }
    public double Arm { get; init; } = 30;
    public double Pitch { get; init; } = 0.7;
    public double ArmSpread { get; init; } = 0.2;
    public double PathSpread { get; init; } = 2;
    public double Slope { get; init; } = 8;
    public double Mark { get; init; } = 0.05;
    public double BacklashDegrees { get; init; } = 5;
    public double Hand { get; init; } = 1.0 / 128;
    public double FrameTurnedDegrees { get; init; } = 2;
}

/// <summary>
/// A leg with a true mirror on three contacts, traced with vectors in the room: the tube fires along +x, the mirror turns the beam
/// along ±y, z is up. It shares no formula with the adviser.
/// </summary>
internal sealed class TrueLeg
{
    private static readonly Vec Incoming = new(1, 0, 0), Up = new(0, 0, 1);

    private readonly LegRanges _ranges;
    private readonly Random _random;
    private readonly Vec _rail, _normal, _right, _offset, _reflecting;
    private readonly Vec[] _contacts = new Vec[3];
    private readonly double[] _knob = new double[3], _contact = new double[3], _height = new double[3];
    private readonly int[] _sense = new int[3];
    private readonly Dictionary<double, double> _path = [];
    private readonly double _face;

    public TrueLeg(LegRanges ranges, Random random)
    {
        (_ranges, _random) = (ranges, random);
        _rail = new(0, random.Next(2) == 0 ? 1 : -1, 0);
        _normal = (_rail - Incoming).Unit();
        _right = _normal.Cross(Up);
        _face = Uniform(4);
        _reflecting = _face * _normal;
        _offset = (Uniform(2) * _rail.Cross(Up)) + (Uniform(2) * Up);
        Vec beamAt = (Uniform(3) * _right) + (Uniform(3) * Up);
        double a = ranges.Arm / 2, turned = ranges.FrameTurnedDegrees * Math.PI / 180;
        (double X, double Y)[] corners = [(-a, -a), (a, -a), (-a, a)];
        for (int i = 0; i < 3; i++)
        {
            double scale = 1 + Uniform(ranges.ArmSpread);
            (double px, double py) = ranges.ThreeScrews ? (0, 0) : corners[0];
            double x = px + (scale * (corners[i].X - px)), y = py + (scale * (corners[i].Y - py));
            (double sin, double cos) = Math.SinCos(turned);
            _contacts[i] = ((((cos * x) - (sin * y)) * _right) + (((sin * x) + (cos * y)) * Up)) - beamAt;
            _sense[i] = random.Next(2) == 0 ? 1 : -1;
            _contact[i] = Uniform(ranges.BacklashDegrees / 720);
        }

        Misalign(Uniform(ranges.Slope) / 1000, Uniform(ranges.Slope) / 1000);
    }

    public static string Screw(int contact) => contact switch { 0 => "C", 1 => "A", _ => "B" };

    public MeasuredPoint Fire(double path)
    {
        CardPoint at = OnTape(path);
        return new(new(at.U + (_ranges.Mark * Normal()), at.V + (_ranges.Mark * Normal())), Covariance2.Isotropic(_ranges.Mark));
    }

    /// <summary>The knob turns, with the hand's error; the contact follows with play.</summary>
    public void Turn(string screw, double turns)
    {
        int i = screw switch { "C" => 0, "A" => 1, _ => 2 };
        double half = _ranges.BacklashDegrees / 720;
        _knob[i] += turns + (_ranges.Hand * Normal());
        _contact[i] = Math.Clamp(_contact[i], _knob[i] - half, _knob[i] + half);
    }

    /// <summary>The screw's contact comes loose and moves by itself.</summary>
    public void Slip(int contact, double millimetres) => _height[contact] += millimetres;

    /// <summary>Distance between the straight-on marks of both ends of the true travel.</summary>
    public double Spread()
    {
        Vec near = Across(_ranges.Near), far = Across(_ranges.Far);
        Vec apart = far - near;
        return Math.Sqrt(apart.Dot(apart));
    }

    public CardPoint OnTape(double path)
    {
        (double sin, double cos) = Math.SinCos(_ranges.IncidenceDegrees * Math.PI / 180);
        Vec right = _rail.Cross(Up), eu = (cos * right) + (sin * _rail), centre = _reflecting + _offset + (TruePath(path) * _rail);
        Vec hit = Hit(centre, eu.Cross(Up)) - centre;
        return new(hit.Dot(eu), hit.Dot(Up));
    }

    /// <summary>Change of the slope for one turn clockwise, mrad: the true response.</summary>
    public (double U, double V) Response(string screw)
    {
        int i = screw switch { "C" => 0, "A" => 1, _ => 2 };
        (double u0, double v0) = Slopes();
        _contact[i] += 0.01;
        (double u1, double v1) = Slopes();
        _contact[i] -= 0.01;
        return (1e5 * (u1 - u0), 1e5 * (v1 - v0));
    }

    private Vec Across(double path)
    {
        Vec centre = _reflecting + _offset + (TruePath(path) * _rail);
        return Hit(centre, _rail) - centre;
    }

    private double TruePath(double path) => _path.TryGetValue(path, out double known)
        ? known
        : _path[path] = path + Uniform(_ranges.PathSpread);

    private (Vec Origin, Vec Along) Beam()
    {
        Vec[] at = [.. Enumerable.Range(0, 3).Select(i => _contacts[i] + ((_height[i] + (_sense[i] * _ranges.Pitch * _contact[i])) * _normal))];
        Vec m = (at[1] - at[0]).Cross(at[2] - at[0]).Unit();
        if (m.Dot(_normal) < 0)
            m = -1 * m;
        Vec onFace = at[0] + (_face * m);
        double s = (onFace - _reflecting).Dot(m) / Incoming.Dot(m);
        return (_reflecting + (s * Incoming), Incoming - (2 * Incoming.Dot(m) * m));
    }

    private Vec Hit(Vec centre, Vec planeNormal)
    {
        (Vec origin, Vec along) = Beam();
        return origin + ((centre - origin).Dot(planeNormal) / along.Dot(planeNormal) * along);
    }

    /// <summary>The true slope, mm per mm.</summary>
    public (double U, double V) Slopes()
    {
        (_, Vec along) = Beam();
        return (along.Dot(_rail.Cross(Up)) / along.Dot(_rail), along.Dot(Up) / along.Dot(_rail));
    }

    // The contacts' first heights: Newton steps on the traced slopes.
    private void Misalign(double u, double v)
    {
        for (int step = 0; step < 8; step++)
        {
            (double u0, double v0) = Slopes();
            (double au, double av) = By(1, u0, v0);
            (double bu, double bv) = By(2, u0, v0);
            double determinant = (au * bv) - (av * bu);
            _height[1] += (((u - u0) * bv) - ((v - v0) * bu)) / determinant;
            _height[2] += ((au * (v - v0)) - (av * (u - u0))) / determinant;
        }
    }

    private (double U, double V) By(int contact, double u0, double v0)
    {
        const double Little = 1e-5;
        _height[contact] += Little;
        (double u, double v) = Slopes();
        _height[contact] -= Little;
        return ((u - u0) / Little, (v - v0) / Little);
    }

    private double Uniform(double reach) => ((2 * _random.NextDouble()) - 1) * reach;

    private double Normal() => Math.Sqrt(-2 * Math.Log(1 - _random.NextDouble())) * Math.Cos(2 * Math.PI * _random.NextDouble());
}
