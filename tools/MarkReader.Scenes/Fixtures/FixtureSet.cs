using MarkReader.Scenes.Output;

namespace MarkReader.Scenes.Fixtures;

/// <summary>All photos of fixtures/photos, in the order of their README.</summary>
public static class FixtureSet
{
    /// <summary>Renders every fixture whose name contains <paramref name="filter"/> into a folder, photo and truth side by side.</summary>
    /// <returns>Names and sizes in bytes.</returns>
    public static IEnumerable<(string FileName, int Bytes)> Write(string folder, string filter)
    {
        Directory.CreateDirectory(folder);
        foreach (Fixture fixture in LegFixtures.All().Concat(SingleFixtures.All()).Where(f => f.Name.Contains(filter, StringComparison.Ordinal)))
        {
            Scene scene = fixture.Render();
            File.WriteAllBytes(Path.Combine(folder, fixture.FileName), scene.Photo);
            File.WriteAllText(Path.Combine(folder, fixture.Name + ".truth.json"), scene.Truth.ToJson());
            yield return (fixture.FileName, scene.Photo.Length);
        }
    }
}
