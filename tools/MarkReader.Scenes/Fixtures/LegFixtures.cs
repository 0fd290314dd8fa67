using MarkReader.Rendering.Specs;

namespace MarkReader.Scenes.Fixtures;

/// <summary>The aim pairs: rounds of the invented machine, fired and photographed in order.</summary>
internal static class LegFixtures
{
    private static readonly LegRound s_leg1First = new("1", 80, 480, new(-1.2, 0.8), new(14.5, 9));
    private static readonly LegRound s_leg1Second = new("1", 80, 480, new(-1.2, 0.8), new(-4.5, 6.5));
    private static readonly LegRound s_leg1Third = new("1", 80, 480, new(-1.2, 0.8), new(2.1, -1.3));
    private static readonly LegRound s_leg1Fourth = new("1", 80, 480, new(-1.2, 0.8), new(8, -11));
    private static readonly LegRound s_leg2First = new("2", 60, 560, new(2.4, -1.6), new(-13, 8));
    private static readonly LegRound s_leg2Second = new("2", 60, 560, new(2.4, -1.6), new(5, -9));
    private static readonly LegRound s_leg2Third = new("2", 60, 560, new(2.4, -1.6), new(-9, -6.5));
    private static readonly LegRound s_leg3First = new("3", 70, 190, new(0.5, -0.7), new(45, -20));

    public static IEnumerable<Fixture> All()
    {
        TargetSpec mirrorFrame = new(TargetMaterial.PaintedMetal, 38, 40, Corners(33, 35));
        TargetSpec headPlate = new(TargetMaterial.BrushedMetal, 36, 44, Corners(31, 39));
        TapeSpec cream = new(TapeMaterial.CreamTape, 0.2, -0.1, 25.5, 24, 90.6, 0.05);
        TapeSpec paper = new(TapeMaterial.WhitePaper, -0.1, 0.2, 25, 23, 1.2, 0.04);

        SceneSpec a = Base(4101, mirrorFrame, [cream]);
        yield return Near("leg1-first", s_leg1First, a with { Pose = new(33, 9, 70, 3, 0.48, 0.51) });
        yield return Far("leg1-first", s_leg1First, Second(a, 1) with { Pose = new(31, 12, 150, -5, 0.52, 0.5) }, showsNear: true);

        SceneSpec b = Base(4102, mirrorFrame, [cream with { TurnDegrees = 89.2 }]);
        yield return Near("leg1-second", s_leg1Second, b with { Pose = new(36, 14, 200, -4, 0.5, 0.47), Sensor = b.Sensor with { DefocusRadius = 0.8 } });
        yield return Far("leg1-second", s_leg1Second, Second(b, 2) with { Pose = new(34, 6, 20, 8, 0.47, 0.52) }, showsNear: true);

        SceneSpec c = Base(4103, mirrorFrame, [cream with { TurnDegrees = 91 }]);
        yield return Near("leg1-third", s_leg1Third, c with { Pose = new(30, 17, 310, 2, 0.52, 0.5) });
        yield return Far("leg1-third", s_leg1Third, Second(c with { Seed = 4113 }, 3) with { Pose = new(32, 10, 100, -2, 0.5, 0.5) }, showsNear: false);

        SceneSpec d = Small(Base(4201, headPlate, [paper]));
        yield return Near("leg2-first", s_leg2First, d with { Pose = new(27, 11, 250, -7, 0.5, 0.5) });
        yield return Far("leg2-first", s_leg2First, Second(d, 4) with { Pose = new(26, 20, 180, 4, 0.49, 0.52) }, showsNear: true);

        // Held upright: the pixels are stored lying down, the orientation turns them.
        SceneSpec e = Upright(Base(4203, headPlate, [paper with { Material = TapeMaterial.ThermalPaper }]));
        yield return Near("leg2-third", s_leg2Third, e with { Pose = new(30, 13, 45, 6, 0.5, 0.5) });
        yield return Far("leg2-third", s_leg2Third, Second(e with { Seed = 4213 }, 5) with { Pose = new(28, 8, 290, -9, 0.5, 0.48) }, showsNear: false);

        yield return Both("leg1-fourth-both", s_leg1Fourth, Base(4104, mirrorFrame, [cream]) with { Pose = new(35, 10, 120, -3, 0.5, 0.5) }, "left");
        yield return Both("leg2-second-both", s_leg2Second, Small(Base(4202, headPlate, [])) with { Pose = new(28, 7, 340, 5, 0.51, 0.49) }, "upper");

        SceneSpec bed = Base(4301, new(TargetMaterial.Wood), [new(TapeMaterial.CreamTape, 0, 0, 76, 48, 0.7, 0.04)]);
        yield return Both("leg3-first-both", s_leg3First, bed with { Card = bed.Card! with { Kind = "bed", InkSoftness = 0.05 }, Pose = new(13.5, 15, 270, 2, 0.5, 0.5) }, "left");
    }

    public static ScrewSpec[] Corners(double u, double v) => [new(-u, v, 2.6, false), new(u, v, 2.6, false), new(u, -v, 2.6, false), new(-u, -v, 2.6, false)];

    public static SceneSpec Base(int seed, TargetSpec target, TapeSpec[] tapes) => new("aim", seed)
    {
        Camera = new(4032, 3024, 3060, 9, -6),
        Card = new(InkSpread: 0.012, InkSoftness: 0.032, CutMargin: 0.8, InkAlbedo: 0.045),
        Target = target,
        Tapes = tapes,
        Light = new(0.74, 0.3, 215, 0.16, 1.05, 0.9),
        Sensor = new(LensSigma: 0.7, FullWell: 6500, ReadNoise: 4, NoiseGrain: 0.6, Sharpening: 0.25, Tone: 0.15),
        Output = new(Quality: 86),
    };

    public static SceneSpec Small(SceneSpec spec) => spec with { Camera = new(3264, 2448, 2480, -5, 8), Output = spec.Output with { Quality = 88 } };

    private static SceneSpec Upright(SceneSpec spec) => spec with { Camera = new(3024, 4032, 3060, -4, 7), Output = spec.Output with { Orientation = 6 } };

    /// <summary>Another photo of the same target: same textures, other noise, the light a little changed.</summary>
    private static SceneSpec Second(SceneSpec spec, int n) => spec with
    {
        NoiseSeed = spec.Seed + 500 + n,
        Light = spec.Light with { Exposure = spec.Light.Exposure * (0.9 + (0.05 * n)), GradientDegrees = 40 + (50 * n) },
    };

    private static Fixture Near(string name, LegRound round, SceneSpec spec) =>
        new($"{name}-near", spec with { Kind = "aim-near", Burns = [Burn(round.Near, 0, spec.Seed)] }, round, "near");

    private static Fixture Far(string name, LegRound round, SceneSpec spec, bool showsNear) => new(
        $"{name}-far",
        spec with { Kind = "aim-far", Burns = showsNear ? [Burn(round.Near, 0, spec.Seed), Burn(round.Far, 1, spec.Seed)] : [Burn(round.Far, 1, spec.Seed)] },
        round,
        "far");

    private static Fixture Both(string name, LegRound round, SceneSpec spec, string first) => new(
        name, spec with { Kind = "aim-both", Burns = [Burn(round.Near, 0, spec.Seed), Burn(round.Far, 1, spec.Seed)] }, round, "both", first);

    /// <summary>The beam widens with the path: the far mark is the larger and paler one.</summary>
    private static BurnSpec Burn(Output.PointTruth at, int far, int seed)
    {
        double radius = 0.85 + (0.35 * far) + (0.04 * (seed % 5));
        return new(at.U, at.V, radius, 0.08 + (0.05 * far), 3.0 - (0.5 * far), radius + 0.55, 0.4 + (0.1 * far)) { AxisRatio = 0.96, AxisDegrees = seed % 180, Roughness = 0.012, Charring = 0.85 };
    }
}
