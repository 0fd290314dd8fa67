using MarkReader.Rendering.Sampling;
using MarkReader.Rendering.Specs;

namespace MarkReader.Scenes.Sampling;

/// <summary>Draws random scenes by kind; equal kind and seed give equal scenes.</summary>
public static class SceneSampler
{
    private static readonly Dictionary<string, Func<SceneSpec, Random, SceneSpec>> s_twists = new()
    {
        ["tidy"] = (s, _) => s,
        ["tilt"] = PoseTwists.Tilt,
        ["small"] = PoseTwists.Small,
        ["large"] = PoseTwists.Large,
        ["rotated"] = PoseTwists.Rotated,
        ["wideLens"] = PoseTwists.WideLens,
        ["curved"] = PoseTwists.Curved,
        ["lifted"] = PoseTwists.Lifted,
        ["printScale"] = PoseTwists.PrintScale,
        ["blur"] = LightTwists.Blur,
        ["motion"] = LightTwists.Motion,
        ["dark"] = LightTwists.Dark,
        ["shadow"] = LightTwists.Shadow,
        ["glare"] = LightTwists.Glare,
        ["formats"] = LightTwists.Formats,
        ["stain"] = BurnTwists.Stain,
        ["ring"] = BurnTwists.Ring,
        ["hole"] = (s, r) => BurnTwists.Hole(s, r, HoleKind.Dark),
        ["brightHole"] = (s, r) => BurnTwists.Hole(s, r, HoleKind.BrightMetal),
        ["faint"] = BurnTwists.Faint,
        ["overlap"] = BurnTwists.Overlap,
        ["one"] = (s, r) => s with { Burns = TidyScene.Burns(r, s.Tapes, 1) },
        ["four"] = (s, r) => s with { Burns = TidyScene.Burns(r, s.Tapes, 4) },
        ["paper"] = (s, r) => SurfaceTwists.Material(s, r, TapeMaterial.WhitePaper),
        ["cream"] = (s, r) => SurfaceTwists.Material(s, r, TapeMaterial.CreamTape),
        ["blue"] = (s, r) => SurfaceTwists.Material(s, r, TapeMaterial.BlueTape),
        ["cardboard"] = (s, r) => SurfaceTwists.Material(s, r, TapeMaterial.Cardboard),
        ["thermal"] = (s, r) => SurfaceTwists.Material(s, r, TapeMaterial.ThermalPaper),
        ["tapeOver"] = SurfaceTwists.TapeOver,
        ["pen"] = SurfaceTwists.Pen,
        ["dirty"] = SurfaceTwists.Dirty,
        ["screws"] = SurfaceTwists.Screws,
        ["secondCard"] = SurfaceTwists.SecondCard,
        ["bed"] = BedScene.Turn,
        ["workshop"] = WorkshopScene.Turn,
        ["noCard"] = (s, _) => s with { Card = null, Tapes = [], Burns = [] },
        ["mirrored"] = (s, _) => s with { Output = s.Output with { Mirrored = true } },
        ["noMark"] = (s, _) => s with { Burns = [] },
        ["tooDark"] = LightTwists.TooDark,
    };

    /// <summary>The kinds that must be refused, or in which there is nothing to measure.</summary>
    public static IReadOnlyList<string> Refusals { get; } = ["noCard", "mirrored", "noMark", "tooDark"];

    /// <summary>The kinds that can be measured, tidy first.</summary>
    public static IReadOnlyList<string> Kinds { get; } = [.. s_twists.Keys.Except(Refusals)];

    /// <exception cref="ArgumentException">There is no such kind.</exception>
    public static SceneSpec Draw(string kind, int seed)
    {
        if (!s_twists.TryGetValue(kind, out Func<SceneSpec, Random, SceneSpec>? twist))
            throw new ArgumentException($"There is no scene kind '{kind}'; kinds are {string.Join(", ", s_twists.Keys)}.", nameof(kind));
        Random random = new(Mix(kind, seed));
        return twist(TidyScene.Draw(random), random) with { Kind = kind, Seed = seed };
    }

    /// <summary>One seed from a name and a number (FNV-1a), the same on every machine.</summary>
    private static int Mix(string kind, int seed)
    {
        unchecked
        {
            uint hash = 2166136261;
            foreach (char c in kind)
                hash = (hash ^ c) * 16777619;
            hash = (hash ^ (uint)seed) * 16777619;
            return (int)(hash ^ (hash >> 15)) & int.MaxValue;
        }
    }
}
