using MarkReader.Rendering.Specs;

namespace MarkReader.Rendering.Surfaces;

/// <summary>The target's plate with its screws, and the machine's inside behind it.</summary>
internal sealed class TargetSurface(TargetSpec spec, int seed)
{
    private static readonly Rgb s_far = Rgb.Grey(0.04);
    private readonly ScrewSpec[] _screws = [.. spec.Screws ?? []];

    public Rgb Albedo(double u, double v)
    {
        if (double.IsNaN(u))
            return s_far;
        double inside = Math.Min(spec.HalfWidth - Math.Abs(u), spec.HalfHeight - Math.Abs(v));
        if (inside < 0)
            return Textures.Behind(u, v, seed);
        Rgb albedo = Textures.Target(spec.Material, u, v, seed);
        if (inside < 1.2)
            albedo = (inside < 0.5 ? 1.25f : 0.8f) * albedo;
        foreach (ScrewSpec screw in _screws)
            albedo = Screw(screw, u - screw.U, v - screw.V, albedo);
        return albedo;
    }

    private Rgb Screw(ScrewSpec screw, double du, double dv, Rgb under)
    {
        double r = Math.Sqrt((du * du) + (dv * dv));
        if (r > 1.4 * screw.Radius)
            return under;
        float edge = (float)Normal.Distribution((screw.Radius - r) / 0.06);
        if (screw.Hole)
            return Rgb.Mix(under, Rgb.Grey(0.012), edge);
        float shade = (float)Math.Clamp(0.5 + (0.35 * dv / screw.Radius), 0, 1);
        Rgb head = shade * (1 + (0.1f * Noise.At(du * 2, dv * 9, seed))) * new Rgb(0.42f, 0.42f, 0.41f);

        // A hexagon socket in the head, a soft shadow round it.
        double angle = Math.Atan2(dv, du) + (seed % 7);
        double sector = (Math.PI / 3 * Math.Round(angle / (Math.PI / 3))) - angle;
        float socket = (float)Normal.Distribution(((0.48 * screw.Radius) - (r * Math.Cos(sector))) / 0.08);
        head = Rgb.Mix(head, Rgb.Grey(0.02), socket);
        float shadow = 1 - (0.45f * (float)Math.Exp(-Math.Max(0, r - screw.Radius) / (0.15 * screw.Radius)));
        return Rgb.Mix(shadow * under, head, edge);
    }
}
