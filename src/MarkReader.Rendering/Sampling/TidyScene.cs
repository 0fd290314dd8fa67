using MarkReader.Rendering.Specs;

namespace MarkReader.Rendering.Sampling;

/// <summary>A careful photo in good light: the scene from which the others are made.</summary>
public static class TidyScene
{
    private const double ZoneHalf = 13;

    public static SceneSpec Draw(Random random)
    {
        bool portrait = random.Chance(0.3);
        (int w, int h) = random.Pick((4032, 3024), (4032, 3024), (4000, 3000), (3264, 2448));
        double focal = w * random.Between(0.70, 0.85);
        TapeSpec[] tapes = Tapes(random, random.Pick(TapeMaterial.CreamTape, TapeMaterial.CreamTape, TapeMaterial.WhitePaper, TapeMaterial.ThermalPaper));
        double scale = w / 4032.0;
        return new("tidy", 0)
        {
            Camera = new(portrait ? h : w, portrait ? w : h, focal, random.Between(-20, 20), random.Between(-20, 20)),
            Pose = new(
                scale * random.Between(28, 44),
                random.Between(2, 16),
                random.Between(0, 360),
                random.Between(-12, 12),
                random.Between(0.44, 0.56),
                random.Between(0.44, 0.56)),
            Card = new(
                InkSpread: random.Between(-0.01, 0.03),
                InkSoftness: random.Between(0.024, 0.045),
                CutMargin: random.Between(0.3, 2),
                InkAlbedo: random.Between(0.03, 0.07)),
            Target = Target(random),
            Tapes = tapes,
            Burns = Burns(random, tapes, random.Pick(1, 2, 2, 2, 3)),
            Light = Light(random),
            Sensor = Sensor(random),
            Output = new(Quality: random.Next(82, 96)),
        };
    }

    public static LightSpec Light(Random random) => new(
        random.Between(0.6, 0.95), random.Between(0, 0.4), random.Between(0, 360), random.Between(0.05, 0.3), random.Between(0.98, 1.1), random.Between(0.8, 1.02));

    public static SensorSpec Sensor(Random random) => new(
        LensSigma: random.Between(0.5, 0.9),
        FullWell: random.Between(3000, 9000),
        ReadNoise: random.Between(2, 6),
        NoiseGrain: random.Between(0.3, 0.7),
        Sharpening: random.Between(0, 0.5),
        Tone: random.Between(0, 0.3));

    /// <summary>One strip over the free zone, short of the markers; white paper is the card itself half of the time.</summary>
    public static TapeSpec[] Tapes(Random random, TapeMaterial material)
    {
        if (material == TapeMaterial.WhitePaper && random.Chance(0.5))
            return [];
        double turn = random.Pick(0, 90) + random.Between(-1.5, 1.5);
        double width = material is TapeMaterial.CreamTape or TapeMaterial.BlueTape ? random.Pick(19.0, 24.0) : random.Between(20, 26);
        double translucency = material is TapeMaterial.Cardboard ? 0 : random.Between(0.02, 0.08);
        return [new(material, random.Between(-0.4, 0.4), random.Between(-0.4, 0.4), random.Between(24, 26.5), width, turn, translucency)];
    }

    /// <summary>Marks apart from each other, whole on the strip.</summary>
    public static BurnSpec[] Burns(Random random, IReadOnlyList<TapeSpec> tapes, int count)
    {
        List<BurnSpec> burns = [];
        double limitU = ZoneHalf;
        double limitV = ZoneHalf;
        if (tapes.Count > 0)
        {
            bool upright = Math.Abs(Math.Sin(tapes[0].TurnDegrees * Math.PI / 180)) > 0.7;
            limitU = Math.Min(limitU, ((upright ? tapes[0].Width : tapes[0].Length) / 2) - 0.9);
            limitV = Math.Min(limitV, ((upright ? tapes[0].Length : tapes[0].Width) / 2) - 0.9);
        }

        for (int tries = 0; burns.Count < count && tries < 1000; tries++)
        {
            BurnSpec burn = Burn(random, 0, 0);
            double reach = burn.HaloRadius + 0.6;
            burn = burn with { U = random.Between(-limitU + reach, limitU - reach), V = random.Between(-limitV + reach, limitV - reach) };
            if (burns.All(b => Math.Sqrt(Math.Pow(b.U - burn.U, 2) + Math.Pow(b.V - burn.V, 2)) > b.HaloRadius + burn.HaloRadius + 1))
                burns.Add(burn);
        }

        return [.. burns];
    }

    public static BurnSpec Burn(Random random, double u, double v)
    {
        double radius = random.Between(0.7, 1.7);
        return new(u, v, radius, random.Between(0.06, 0.18), random.Between(2, 3.6), radius + random.Between(0.3, 1.1), random.Between(0.15, 0.8))
        {
            AxisRatio = random.Between(0.9, 1),
            AxisDegrees = random.Between(0, 180),
            Roughness = random.Between(0, 0.02),
            Charring = random.Between(0.6, 1),
        };
    }

    private static TargetSpec Target(Random random)
    {
        TargetMaterial material = random.Pick(TargetMaterial.Wood, TargetMaterial.PaintedMetal, TargetMaterial.PaintedMetal, TargetMaterial.BrushedMetal, TargetMaterial.Cardboard);
        if (material is TargetMaterial.Wood or TargetMaterial.Cardboard || random.Chance(0.4))
            return new(material);
        double half = random.Between(30, 42);
        double tall = random.Between(30, 42);
        ScrewSpec[] screws = half > 35 && tall > 35
            ? [.. new[] { (-1, -1), (1, -1), (1, 1), (-1, 1) }.Select(c => new ScrewSpec(c.Item1 * (half - 4), c.Item2 * (tall - 4), 2.6, false))]
            : [];
        return new(material, half, tall, screws);
    }
}
