using MarkReader.Rendering.Specs;

namespace MarkReader.Rendering.Surfaces;

/// <summary>Albedo of the materials at a place (mm), with their texture; evaluated once for each pixel.</summary>
internal static class Textures
{
    private static readonly Rgb s_paper = new(0.80f, 0.79f, 0.755f);
    private static readonly Rgb s_cream = Rgb.FromDisplay(226, 205, 160);
    private static readonly Rgb s_blue = Rgb.FromDisplay(64, 122, 188);
    private static readonly Rgb s_cardboard = Rgb.FromDisplay(176, 137, 96);
    private static readonly Rgb s_thermal = new(0.82f, 0.825f, 0.815f);
    private static readonly Rgb s_woodLight = Rgb.FromDisplay(188, 148, 102);
    private static readonly Rgb s_woodDark = Rgb.FromDisplay(128, 88, 54);
    private static readonly Rgb s_paint = Rgb.FromDisplay(98, 106, 112);
    private static readonly Rgb s_metal = Rgb.FromDisplay(168, 170, 172);

    public static Rgb Paper(double u, double v, int seed) =>
        (1 + (0.012f * Noise.Fractal(u * 3.1, v * 3.1, 3, seed)) + (0.01f * Noise.At(u * 0.05, v * 0.05, seed + 7))) * s_paper;

    public static Rgb Tape(TapeMaterial material, double along, double across, int seed) => material switch
    {
        TapeMaterial.WhitePaper => Paper(along, across, seed),
        TapeMaterial.CreamTape => Crepe(s_cream, along, across, seed),
        TapeMaterial.BlueTape => Crepe(s_blue, along, across, seed),
        TapeMaterial.Cardboard => Kraft(along, across, seed),
        TapeMaterial.ThermalPaper => (1 + (0.004f * Noise.At(along * 4, across * 4, seed))) * s_thermal,
        _ => throw new ArgumentOutOfRangeException(nameof(material), material, null),
    };

    public static Rgb Target(TargetMaterial material, double u, double v, int seed) => material switch
    {
        TargetMaterial.Wood => Wood(u, v, seed),
        TargetMaterial.PaintedMetal => Paint(u, v, seed),
        TargetMaterial.BrushedMetal => Brushed(u, v, seed),
        TargetMaterial.Cardboard => Kraft(u, v, seed),
        _ => throw new ArgumentOutOfRangeException(nameof(material), material, null),
    };

    /// <summary>The machine's dim inside behind the target.</summary>
    public static Rgb Behind(double u, double v, int seed)
    {
        float n = Noise.Fractal(u * 0.012, v * 0.012, 3, seed);
        return (0.05f + (0.035f * n)) * new Rgb(1, 0.98f, 0.95f);
    }

    /// <summary>Masking tape: fine wrinkles across its length, a little mottling.</summary>
    private static Rgb Crepe(Rgb colour, double along, double across, int seed)
    {
        float wrinkle = Noise.Fractal(along * 2.1, across * 0.42, 3, seed);
        float fine = Noise.At(along * 5.3, across * 1.3, seed + 31);
        float mottle = Noise.Fractal(along * 0.12, across * 0.12, 2, seed + 57);
        return (1 + (0.06f * wrinkle) + (0.03f * fine) + (0.02f * mottle)) * colour;
    }

    private static Rgb Kraft(double u, double v, int seed)
    {
        float flute = 0.02f * (float)Math.Sin((u * 0.9) + (0.6 * Noise.At(u * 0.05, v * 0.05, seed)));
        float fibre = Noise.Fractal(u * 0.8, v * 2.9, 3, seed + 5);
        float fleck = Noise.At(u * 1.7, v * 1.7, seed + 11);
        float dark = fleck > 0.72f ? -0.12f * (fleck - 0.72f) / 0.28f : 0;
        return (1 + flute + (0.06f * fibre) + dark) * s_cardboard;
    }

    private static Rgb Wood(double u, double v, int seed)
    {
        double warp = Noise.Fractal(u * 0.006, v * 0.03, 2, seed);
        double ring = ((v + (14 * warp)) * 0.14) + (u * 0.004);
        float grain = (float)(0.5 + (0.5 * Math.Sin(2 * Math.PI * ring)));
        float fibre = Noise.Fractal(u * 0.11, v * 2.4, 3, seed + 3);
        float pore = Noise.At(u * 0.35, v * 5.2, seed + 9);
        float t = Math.Clamp(0.08f + (0.38f * grain) + (0.3f * fibre) + (pore > 0.55f ? 0.35f * (pore - 0.55f) : 0), 0, 1);
        return Rgb.Mix(s_woodLight, s_woodDark, t);
    }

    private static Rgb Paint(double u, double v, int seed)
    {
        float peel = Noise.Fractal(u * 1.3, v * 1.3, 2, seed);
        float worn = Noise.Fractal(u * 0.03, v * 0.03, 3, seed + 21);
        float scratch = Noise.At((u * 0.9) + (v * 0.5), (u * -0.012) + (v * 0.02), seed + 33);
        float line = scratch > 0.8f ? 0.25f * (scratch - 0.8f) / 0.2f : 0;
        return (1 + (0.06f * peel) + (0.12f * worn) + line) * s_paint;
    }

    private static Rgb Brushed(double u, double v, int seed)
    {
        float brush = Noise.Fractal(u * 0.06, v * 6.1, 3, seed);
        float broad = Noise.Fractal(u * 0.01, v * 0.15, 2, seed + 13);
        return (1 + (0.16f * brush) + (0.18f * broad)) * s_metal;
    }
}
