using MarkReader.Rendering.Specs;
using MarkReader.Scenes.Sampling;

namespace MarkReader.Scenes.Fixtures;

/// <summary>Single photos: other burns, materials and files, and photos that must be refused.</summary>
internal static class SingleFixtures
{
    public static IEnumerable<Fixture> All()
    {
        yield return Sampled("smoke-stain", "stain", 11);
        yield return Sampled("ring-marks", "ring", 12);
        yield return Sampled("burnt-through", "hole", 13);
        yield return Sampled("burnt-through-bright", "brightHole", 14);
        yield return Sampled("cardboard", "cardboard", 15);
        yield return Sampled("blue-tape", "blue", 16);
        yield return Sampled("pen-lines", "pen", 17);
        yield return Sampled("tilted", "tilt", 18);
        yield return Sampled("screws-and-holes", "screws", 19);

        SceneSpec tidy = SceneSampler.Draw("tidy", 20);
        yield return new("grey", Kept(tidy, 0.8) with { Output = new(Quality: 88, Grey: true) });
        yield return new("webp", Kept(SceneSampler.Draw("tidy", 21), 0.6) with { Output = new(PhotoFormat.WebP, 85) });
        yield return new("png-16-bit", Kept(SceneSampler.Draw("tidy", 22), 0.22) with { Output = new(PhotoFormat.Png16) });
        yield return new("turned-by-exif-8", Kept(SceneSampler.Draw("tidy", 23), 0.8) with { Output = new(Quality: 87, Orientation: 8) });

        yield return new("no-card", Kept(SceneSampler.Draw("noCard", 31), 0.6), Refusal: "NO_CARD");
        yield return new("mirrored", Kept(SceneSampler.Draw("mirrored", 32), 0.6), Refusal: "CARD_MIRRORED");
        yield return new("no-mark", Kept(SceneSampler.Draw("noMark", 33), 0.6));
        yield return new("too-dark", Kept(SceneSampler.Draw("tooDark", 34), 0.6), Refusal: "TOO_DARK");
    }

    private static Fixture Sampled(string name, string kind, int seed) => new(name, Kept(SceneSampler.Draw(kind, seed), 0.81));

    /// <summary>Shrunk for the repository, stored at a quality between a phone's and a messenger's.</summary>
    private static SceneSpec Kept(SceneSpec spec, double factor) => spec.Shrunk(factor) with { Output = spec.Output with { Quality = 87 } };
}
