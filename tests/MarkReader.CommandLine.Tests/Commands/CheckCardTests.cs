using System.Text.Json;
using MarkReader.CommandLine.Tests.Support;
using MarkReader.Rendering.Sampling;
using MarkReader.Rendering.Specs;
using MarkReader.Scenes.Output;

namespace MarkReader.CommandLine.Tests.Commands;

/// <summary>Rendered photos of printed cards by the camera of fixtures/camera, through the whole program.</summary>
public sealed class CheckCardTests : IDisposable
{
    private static readonly string s_profile = Path.Combine(Fixtures.Folder("camera"), "profile.json");
    private static readonly CameraSpec s_camera = JsonSerializer.Deserialize<CameraSpec>(File.ReadAllText(Path.Combine(Fixtures.Folder("camera"), "camera.json")), JsonSerializerOptions.Web)!;
    private static readonly LensSpec s_lens = new("demo", 4 * s_camera.FocalLength / s_camera.Width, (int)Math.Round(36 * s_camera.FocalLength / s_camera.Width));

    private readonly string _folder = Directory.CreateTempSubdirectory("cards-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task A_flat_true_card_is_called_good_and_its_size_is_left_to_the_rulers()
    {
        string[] photos = Photograph("flat", new());

        Answer said = (await TheProgram.Run(["checkcard", .. photos, "--camera", s_profile, "--plot", Path.Combine(_folder, "zone.png")])).IsDone();
        Assert.Contains("Good in shape", said.Output, StringComparison.Ordinal);
        Assert.Contains("Photos do not tell how large a print is", said.Output, StringComparison.Ordinal);
        Assert.Equal([0x89, 0x50, 0x4E, 0x47], (await File.ReadAllBytesAsync(Path.Combine(_folder, "zone.png"), TestContext.Current.CancellationToken))[..4]);

        JsonElement found = (await TheProgram.Run(["checkcard", .. photos, "--camera", s_profile, "--ruler-u", "40.01", "--ruler-v", "39.99", "--ruler-uncertainty", "0.01", "--json"])).IsDone().Json;
        Assert.Equal(("good", true), (found.GetProperty("verdict").GetString(), found.GetProperty("sizeJudged").GetBoolean()));
        Assert.Equal(["use"], found.GetProperty("advice").EnumerateArray().Select(a => a.GetString()));
        Assert.Equal(49, found.GetProperty("asDrawn").GetProperty("zone").GetArrayLength());
        Assert.InRange(found.GetProperty("inkSpread").GetProperty("value").GetDouble(), 0.005, 0.015);

        // Read to a tenth of a millimetre, 40 mm say too little of 13 mm for a limit of 0.05 mm.
        JsonElement coarse = (await TheProgram.Run(["checkcard", .. photos, photos[0], "--camera", s_profile, "--ruler-u", "40", "--ruler-v", "40", "--json"])).IsDone().Json;
        Assert.Equal("cannotTell", coarse.GetProperty("verdict").GetString());
        Assert.Equal(photos.Length, coarse.GetProperty("views").GetArrayLength());
        Assert.Contains("is the same file as", Assert.Single(coarse.GetProperty("refused").EnumerateArray()).GetProperty("message").GetString(), StringComparison.Ordinal);
        Assert.Equal(["readRulersFiner"], coarse.GetProperty("advice").EnumerateArray().Select(a => a.GetString()));
    }

    [Fact]
    public async Task A_bent_and_stretched_card_is_not_good_and_is_measured_to_a_hundredth_of_a_millimetre()
    {
        // 0.4 mm at the middle of the sides: z = t²·0.4/25², along 30°; the corners are (cos 30° + sin 30°)² times as high.
        const double Sag = 0.4;
        double highest = Sag * Math.Pow(Math.Cos(Math.PI / 6) + Math.Sin(Math.PI / 6), 2);
        string[] photos = Photograph("bent", new(PrintScaleU: 1.004, Curvature: 2 * Sag / (25 * 25), CurveDegrees: 30));

        JsonElement found = (await TheProgram.Run(["checkcard", .. photos, "--camera", s_profile, "--json"])).IsDone().Json;

        Assert.Equal("notGood", found.GetProperty("verdict").GetString());
        Assert.Equal(["tapeFlat", "stateRulersOnceRead", "printAgain"], found.GetProperty("advice").EnumerateArray().Select(a => a.GetString()));
        Assert.Equal(2 * 0.004 / 2.004, found.GetProperty("stretch").GetProperty("value").GetDouble(), 2e-5);
        Assert.Equal(highest, found.GetProperty("bend").GetProperty("value").GetDouble(), 0.005);
        Assert.True(found.GetProperty("bend").GetProperty("shown").GetBoolean());

        // Taped flat, what is left is the stretch, and that is corrected by the rulers.
        string[] taped = Photograph("taped", new(PrintScaleU: 1.01));
        JsonElement again = (await TheProgram.Run(["checkcard", .. taped, "--camera", s_profile, "--ruler-u", "40.4", "--ruler-v", "40", "--ruler-uncertainty", "0.02", "--json"])).IsDone().Json;
        Assert.Equal("notGood", again.GetProperty("verdict").GetString());
        Assert.Equal("good", again.GetProperty("corrected").GetProperty("verdict").GetString());
        Assert.Equal(["printAgain", "stateRulers"], again.GetProperty("advice").EnumerateArray().Select(a => a.GetString()));

        JsonElement wrong = (await TheProgram.Run(["checkcard", .. taped, "--camera", s_profile, "--ruler-u", "40", "--ruler-v", "40.4", "--ruler-uncertainty", "0.02", "--json"])).IsDone().Json;
        Assert.Equal(["readRulersAgain"], wrong.GetProperty("advice").EnumerateArray().Select(a => a.GetString()));
    }

    // As when the card came loose after the second photo.
    [Fact]
    public async Task Photos_of_two_shapes_cannot_tell_and_say_how_much_of_each_fits()
    {
        string[] flat = Photograph("flat", new(), count: 4), bent = Photograph("bent", new(Curvature: 2 * 0.6 / (25 * 25)), count: 4);
        string[] mixed = ["checkcard", .. flat.Take(2), .. bent.Skip(2), "--camera", s_profile];

        JsonElement found = (await TheProgram.Run([.. mixed, "--json"])).IsDone().Json;
        Assert.Equal(("cannotTell", true), (found.GetProperty("verdict").GetString(), found.GetProperty("shapesDiffer").GetBoolean()));
        Assert.Equal(["photographAgain"], found.GetProperty("advice").EnumerateArray().Select(a => a.GetString()));
        Assert.Contains(found.GetProperty("views").EnumerateArray(), v => v.GetProperty("differs").GetBoolean());

        string said = (await TheProgram.Run(mixed)).IsDone().Output;
        Assert.Contains("Cannot tell: the photos do not seem to show one and the same card", said, StringComparison.Ordinal);
        Assert.Contains("Tape one card down", said, StringComparison.Ordinal);
        Assert.DoesNotContain("Worst error", said, StringComparison.Ordinal);
        Assert.Matches(@"(?m)^\S+-\d\.jpg +\d+ +\d+ of \d+ \(\d+ %\)", said);

        JsonElement whole = (await TheProgram.Run(["checkcard", .. bent, "--camera", s_profile, "--json"])).IsDone().Json;
        Assert.Equal(("notGood", false), (whole.GetProperty("verdict").GetString(), whole.GetProperty("shapesDiffer").GetBoolean()));
    }

    [Fact]
    public async Task Photos_that_cannot_tell_are_refused_with_what_to_do()
    {
        string[] photos = Photograph("few", new(), count: 4);
        string bed = Photograph("bed", new("bed"), count: 1)[0];
        string cropped = Path.Combine(_folder, "cropped.jpg");
        await File.WriteAllBytesAsync(cropped, Scene.Render(Views(new(), 1)[0] with { Camera = s_camera with { Height = 600 } }).Photo, TestContext.Current.CancellationToken);

        await RefusedAsync(3, "CARD_FEW_VIEWS", ["checkcard", .. photos.Take(2), "--camera", s_profile]);
        // The same picture in another file.
        string again = Path.Combine(_folder, "again.jpg");
        await File.WriteAllBytesAsync(again, [.. await File.ReadAllBytesAsync(photos[1], TestContext.Current.CancellationToken), 0], TestContext.Current.CancellationToken);
        await RefusedAsync(3, "CARD_ONE_SIDE", ["checkcard", photos[0], photos[1], again, "--camera", s_profile]);
        await RefusedAsync(2, "PHOTO_TWICE", ["checkcard", photos[0], photos[1], photos[1], "--camera", s_profile]);
        await RefusedAsync(2, "CARD_KINDS_DIFFER", ["checkcard", photos[0], photos[1], bed, "--camera", s_profile]);
        Answer misfit = await RefusedAsync(2, "CAMERA_MISFIT", ["checkcard", photos[0], cropped, "--camera", s_profile]);
        Assert.Contains("use the profile of the camera that took the photos", misfit.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("without the profile", misfit.Error, StringComparison.Ordinal);
        await RefusedAsync(2, "CARD_TOLERANCE_INVALID", ["checkcard", .. photos, "--camera", s_profile, "--tolerance", "0"]);
        Assert.Contains("length of the upright ruler (v)", (await RefusedAsync(2, "RULER_MISSING", ["checkcard", .. photos, "--camera", s_profile, "--ruler-u", "40"])).Error, StringComparison.Ordinal);
        await RefusedAsync(2, "RULER_READING", ["checkcard", .. photos, "--camera", s_profile, "--ruler-u", "100", "--ruler-v", "100"]);
        await RefusedAsync(2, "OPTION_MISSING", ["checkcard", .. photos]);
    }

    // Before the refusal stands how far the photos were measured.
    private static async Task<Answer> RefusedAsync(int status, string code, string[] call)
    {
        Answer answer = await TheProgram.Run(call);
        Assert.Equal(status, answer.Status);
        Assert.Contains($"error: {code}: ", answer.Error, StringComparison.Ordinal);
        return answer;
    }

    private static IReadOnlyList<SceneSpec> Views(CardSpec card, int count) => CardViews.Of(s_camera, card, s_lens, new Random(8), count);

    private string[] Photograph(string name, CardSpec card, int count = 5)
    {
        IReadOnlyList<SceneSpec> views = Views(card, count);
        string[] files = [.. views.Select((_, i) => Path.Combine(_folder, $"{name}-{i}.jpg"))];
        Parallel.For(0, files.Length, i => File.WriteAllBytes(files[i], Scene.Render(views[i]).Photo));
        return files;
    }
}
