using System.Text.Json;
using MarkReader.Imaging.Marks;
using MarkReader.Quantities;

namespace MarkReader.Imaging.Tests.CrossChecks;

/// <summary>The marks against weighted centroids of scikit-image's regions at half depth (Debian's python3-skimage; tools/crosscheck/centroids.py).</summary>
/// <remarks>
/// Both see the same pixels but share neither homography nor model. A centroid at half depth is drawn aside by what a mark lies on: at smoke
/// stains, which the script does not model, it is off by a tenth of a millimetre, so those marks are left to the comparison with truth.
/// </remarks>
public sealed class SkimageCentroidsTests
{
    private static readonly CrossCheckFile s_file = new("skimage-centroids.json");

    public static TheoryData<string> Photos => [.. s_file.Photos.Select(p => p.Photo)];

    [Theory]
    [MemberData(nameof(Photos))]
    public void The_values_were_taken_from_the_photo_as_it_is(string photo) =>
        Assert.True(s_file.IsOf(photo), "the photo has changed: run tools/crosscheck/corners.py, then centroids.py");

    [Fact]
    public void Centroids_of_at_least_35_marks_are_compared() =>
        Assert.True(s_file.Photos.Where(p => IsModelled(p.Photo)).Sum(p => Centroids(p.Values).Count) >= 35);

    [Theory]
    [MemberData(nameof(Photos))]
    public void Marks_lie_within_a_fiftieth_of_a_millimetre_of_the_centroids(string photo)
    {
        JsonElement values = s_file.Photos.Single(p => p.Photo == photo).Values;
        IReadOnlyList<Mark> marks = MeasuredPhotos.Of(photo).Marks;
        Assert.Equal(values.GetArrayLength(), marks.Count);
        if (IsModelled(photo))
            Assert.All(Centroids(values), c => Assert.InRange(marks.Min(m => m.Centre.Point.DistanceTo(c)), 0, 0.02));
    }

    private static bool IsModelled(string photo) => !photo.StartsWith("smoke-stain", StringComparison.Ordinal);

    /// <summary>The weighted centroids; a mark that the script could not tell from another has none.</summary>
    private static List<CardPoint> Centroids(JsonElement values) =>
        [.. values.EnumerateArray().Where(v => v.TryGetProperty("weightedCentroid", out _)).Select(v => CrossCheckFile.Card(v.GetProperty("weightedCentroid")))];
}
