using System.Globalization;
using System.Text.Json;
using MarkReader.Cards;
using MarkReader.Imaging.Rectification;
using MarkReader.Quantities;

namespace MarkReader.Imaging.Tests.CrossChecks;

/// <summary>The view of the card against OpenCV 4.6's own markers, corner refinement and homography (Debian's python3-opencv; tools/crosscheck/corners.py).</summary>
public sealed class OpenCvCornersTests
{
    private static readonly CrossCheckFile s_file = new("opencv-corners.json");

    public static TheoryData<string> Photos => [.. s_file.Photos.Select(p => p.Photo)];

    [Fact]
    public void There_are_values_for_at_least_twenty_photos() => Assert.True(s_file.Photos.Count >= 20);

    [Theory]
    [MemberData(nameof(Photos))]
    public void The_values_were_taken_from_the_photo_as_it_is(string photo) =>
        Assert.True(s_file.IsOf(photo), "the photo has changed: run tools/crosscheck/corners.py, then centroids.py");

    [Theory]
    [MemberData(nameof(Photos))]
    public void Saddle_points_agree_to_a_tenth_of_a_pixel(string photo)
    {
        PixelVector[] differences = SaddleDifferences(photo);

        Assert.True(differences.Length >= 10, $"only {differences.Length} saddle points");
        Assert.InRange(Rms(differences), 0, 0.1);
    }

    [Fact]
    public void No_part_of_a_pixel_lies_between_the_two_conventions()
    {
        PixelVector[] all = [.. s_file.Photos.SelectMany(p => SaddleDifferences(p.Photo))];

        Assert.InRange(all.Average(d => d.X), -0.01, 0.01);
        Assert.InRange(all.Average(d => d.Y), -0.01, 0.01);
    }

    [Theory]
    [MemberData(nameof(Photos))]
    public void The_homographies_agree_all_over_the_free_zone_to_an_eighth_of_a_pixel(string photo)
    {
        JsonElement values = Values(photo);
        Homography other = Homography.FromElements([.. values.GetProperty("homography").EnumerateArray().SelectMany(r => r.EnumerateArray()).Select(x => x.GetDouble())]);
        ICardProjection view = MeasuredPhotos.Of(photo).Projection;
        double step = Kind(values).ZoneSide / 8;
        for (int i = -4; i <= 4; i++)
        {
            for (int j = -4; j <= 4; j++)
            {
                CardPoint p = new(i * step, j * step);
                Assert.InRange(view.ToPhoto(p).DistanceTo(other.Map(p)), 0, 0.12);
            }
        }
    }

    [Theory]
    [MemberData(nameof(Photos))]
    public void The_middles_of_the_markers_agree_to_a_tenth_of_a_pixel(string photo)
    {
        // Ink spreads and light blooms: a marker's corners move outwards or inwards alike, and the more so in the photo's own values than in
        // linear light. The mean of the four stays.
        ICardProjection view = MeasuredPhotos.Of(photo).Projection;
        JsonElement values = Values(photo);
        List<double> distances = [];
        foreach (JsonProperty seen in values.GetProperty("markers").EnumerateObject())
        {
            CardMarker marker = Kind(values).Markers.Single(m => m.Id.ToString(CultureInfo.InvariantCulture) == seen.Name);
            PixelPoint[] corners = [.. marker.Corners.Select(view.ToPhoto)];
            JsonElement[] found = [.. seen.Value.EnumerateArray()];
            Assert.Equal(4, found.Length);
            distances.Add(Math.Sqrt(Square(corners.Average(c => c.X) - found.Average(c => c[0].GetDouble())) + Square(corners.Average(c => c.Y) - found.Average(c => c[1].GetDouble()))));
        }

        // The median, since a screw's head may cover a corner.
        Assert.True(distances.Count >= 6, $"only {distances.Count} markers");
        Assert.InRange(distances.Order().ElementAt(distances.Count / 2), 0, 0.1);
    }

    private static PixelVector[] SaddleDifferences(string photo)
    {
        ICardProjection view = MeasuredPhotos.Of(photo).Projection;
        return [.. Values(photo).GetProperty("saddles").EnumerateArray().Select(s => view.ToPhoto(CrossCheckFile.Card(s)) - CrossCheckFile.Pixel(s))];
    }

    private static JsonElement Values(string photo) => s_file.Photos.Single(p => p.Photo == photo).Values;

    private static CardKind Kind(JsonElement values) => CardKinds.Find(values.GetProperty("kind").GetString()!)!;

    private static double Rms(PixelVector[] differences) => Math.Sqrt(differences.Average(d => (d.X * d.X) + (d.Y * d.Y)));

    private static double Square(double x) => x * x;
}
