using System.Text.Json;
using MarkReader.Cameras.Boards;
using MarkReader.Cameras.Profiles;
using MarkReader.Imaging.Boards;

namespace MarkReader.Application.Cameras;

/// <summary>What was measured in a photo of the board, as it is kept (JSON). It is read again to the last digit.</summary>
internal static class BoardPhotoText
{
    public static string Write(BoardPhoto photo)
    {
        CameraTraits t = photo.Traits;
        return JsonSerializer.Serialize(
            new Kept(
                new(photo.View.Photo.Width, photo.View.Photo.Height),
                new(t.Sensor.Width, t.Sensor.Height),
                t.FocalLength,
                t.FocalLength35,
                t.Zoom,
                t.ModelDigest,
                photo.MarkersSeen,
                photo.ResidualPx,
                [.. photo.View.Sightings.Select(s => (double[])[s.At.U, s.At.V, s.Seen.X, s.Seen.Y, s.Along.X, s.Along.Y, s.StandardUncertainty, s.Group, s.Across.U, s.Across.V])]),
            JsonSerializerOptions.Web);
    }

    /// <param name="name">The photo's name, for messages.</param>
    public static BoardPhoto Read(string json, string name)
    {
        Kept k = JsonSerializer.Deserialize<Kept>(json, JsonSerializerOptions.Web)!;
        BoardSighting[] sightings = [.. k.Sightings.Select(s => new BoardSighting(new(s[0], s[1]), new(s[2], s[3]), new(s[4], s[5]), s[6], (int)s[7], new(s[8], s[9])))];
        return new(
            new(name, new(k.View.Width, k.View.Height), sightings),
            new(new(k.Sensor.Width, k.Sensor.Height), k.FocalLength, k.FocalLength35, k.Zoom, k.ModelDigest),
            k.MarkersSeen,
            k.ResidualPx);
    }

    /// <param name="Sightings">Each as u, v, x, y, the direction's x and y, its uncertainty, its group, and the direction on the board.</param>
    private sealed record Kept(
        Size View,
        Size Sensor,
        double? FocalLength,
        int? FocalLength35,
        double Zoom,
        string? ModelDigest,
        int MarkersSeen,
        double ResidualPx,
        IReadOnlyList<double[]> Sightings);

    private sealed record Size(int Width, int Height);
}
