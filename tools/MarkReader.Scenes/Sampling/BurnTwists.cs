using MarkReader.Rendering.Sampling;
using MarkReader.Rendering.Specs;

namespace MarkReader.Scenes.Sampling;

/// <summary>Scenes that differ by what the pulse left.</summary>
internal static class BurnTwists
{
    public static SceneSpec Stain(SceneSpec s, Random r)
    {
        double towards = r.Between(0, 360);
        return Each(s, b => b with
        {
            Kind = "stain",
            StainDensity = r.Between(0.25, 1),
            StainLength = r.Between(2, 5),
            StainDegrees = towards + r.Between(-15, 15),
        });
    }

    public static SceneSpec Ring(SceneSpec s, Random r) => Each(s, b => b with
    {
        Kind = "ring",
        Radius = b.Radius * 1.25,
        HaloRadius = b.HaloRadius + (0.25 * b.Radius),
        RingDepth = r.Between(0.5, 0.92),
        RingRadius = r.Between(0.4, 0.65),
    });

    public static SceneSpec Hole(SceneSpec s, Random r, HoleKind kind) => Each(s, b => b with
    {
        Kind = "hole",
        Hole = kind,
        HoleRadius = r.Between(0.4, 0.85),
        Density = r.Between(2.2, 3.6),
    });

    /// <summary>A scorch some times as deep as the tape's texture.</summary>
    public static SceneSpec Faint(SceneSpec s, Random r) => Each(s, b => b with
    {
        Kind = "faint",
        Density = r.Between(0.14, 0.4),
        HaloDensity = r.Between(0.02, 0.06),
        EdgeWidth = r.Between(0.15, 0.4),
        Charring = r.Between(0, 0.4),
    });

    /// <summary>Two marks whose centres are 0.4 to 0.75 of a diameter apart.</summary>
    public static SceneSpec Overlap(SceneSpec s, Random r)
    {
        BurnSpec first = s.Burns[0] with { Kind = "overlap" };
        double radius = first.Radius * r.Between(0.85, 1.15);
        double distance = 2 * first.Radius * r.Between(0.4, 0.75);
        double towards = Math.Atan2(-first.V, -first.U) + r.Between(-0.7, 0.7);
        BurnSpec second = first with
        {
            U = first.U + (distance * Math.Cos(towards)),
            V = first.V + (distance * Math.Sin(towards)),
            Radius = radius,
            HaloRadius = first.HaloRadius + radius - first.Radius,
        };
        return s with { Burns = [first, second] };
    }

    private static SceneSpec Each(SceneSpec s, Func<BurnSpec, BurnSpec> change) => s with { Burns = [.. s.Burns.Select(change)] };
}
