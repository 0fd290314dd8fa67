using MarkReader.CommandLine.Tests.Support;
using SixLabors.ImageSharp;
using SixLabors.ImageSharp.PixelFormats;

namespace MarkReader.CommandLine.Tests.Commands;

[Collection(nameof(PhotoTests))]
public sealed class OverlayTests(Photos photos) : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("overlays-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Theory]
    [InlineData("aim.png")]
    [InlineData("aim.jpg")]
    public async Task The_photo_with_the_drawing_has_the_photo_s_size_and_differs_from_it_about_the_aim_point(string name)
    {
        Answer answer = (await TheProgram.Run([.. Aim, "--json", "--overlay", At(name)])).IsDone();
        using Image<Rgb24> before = Image.Load<Rgb24>(photos["both.jpg"]);
        using Image<Rgb24> after = Image.Load<Rgb24>(At(name));
        Assert.Equal(before.Size(), after.Size());
        var aim = answer.Json.GetProperty("aim");
        (int x, int y) = ((int)Math.Round(aim.GetProperty("x").GetDouble()), (int)Math.Round(aim.GetProperty("y").GetDouble()));
        Assert.True(Difference(before, after, x, y) > 10 * Difference(before, after, 40, 40));
        Assert.Single(Directory.GetFileSystemEntries(_folder));
    }

    [Fact]
    public async Task An_svg_is_the_drawing_alone_in_photo_pixels()
    {
        (await TheProgram.Run([.. Aim, "--overlay", At("aim.svg")])).IsDone();
        string svg = await File.ReadAllTextAsync(At("aim.svg"), TestContext.Current.CancellationToken);
        Assert.Contains("viewBox=\"-0.5 -0.5 900 900\"", svg, StringComparison.Ordinal);
        Assert.Contains("data-part=\"aim\"", svg, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Measured_marks_are_drawn_too()
    {
        (await TheProgram.Run("measure", photos["near.jpg"], "--overlay", At("marks.svg"))).IsDone();
        Assert.Contains("data-part=\"mark\"", await File.ReadAllTextAsync(At("marks.svg"), TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("OVERLAY_FORMAT_UNKNOWN", "aim.gif")]
    [InlineData("OUTPUT_NOT_WRITABLE", "nowhere/aim.png")]
    public async Task An_overlay_that_cannot_be_written_is_refused_and_leaves_no_file(string code, string name)
    {
        (await TheProgram.Run([.. Aim, "--overlay", At(name)])).IsRefusal(2, code);
        Assert.Empty(Directory.GetFileSystemEntries(_folder));
    }

    [Fact]
    public async Task An_overlay_does_not_replace_the_photo()
    {
        byte[] before = await File.ReadAllBytesAsync(photos["both.jpg"], TestContext.Current.CancellationToken);
        (await TheProgram.RunIn(photos.Folder, [.. Aim, "--overlay", "./both.jpg"])).IsRefusal(2, "OUTPUT_IS_INPUT");
        (await TheProgram.RunIn(photos.Folder, "measure", "both.jpg", "--overlay", photos["both.jpg"])).IsRefusal(2, "OUTPUT_IS_INPUT");
        Assert.Equal(before, await File.ReadAllBytesAsync(photos["both.jpg"], TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task A_debug_folder_that_cannot_be_made_is_refused() =>
        (await TheProgram.Run("measure", photos["near.jpg"], "--debug-dir", Path.Combine(photos["near.jpg"], "stages"))).IsRefusal(2, "OUTPUT_NOT_WRITABLE");

    private string[] Aim => ["aim", "--near", photos["near.jpg"], "--far", photos["both.jpg"], "--near-path", "80", "--far-path", "480"];

    private string At(string name) => Path.Combine(_folder, name);

    /// <summary>Mean absolute difference of green in a square of 31 px.</summary>
    private static double Difference(Image<Rgb24> a, Image<Rgb24> b, int x, int y)
    {
        double sum = 0;
        for (int dy = -15; dy <= 15; dy++)
        {
            for (int dx = -15; dx <= 15; dx++)
                sum += Math.Abs(a[x + dx, y + dy].G - b[x + dx, y + dy].G);
        }

        return sum / (31 * 31);
    }
}
