using System.Text.Json;
using MarkReader.CommandLine.Tests.Support;
using MarkReader.Rendering.Sampling;
using MarkReader.Rendering.Specs;
using MarkReader.Scenes.Output;

namespace MarkReader.CommandLine.Tests.Commands;

public sealed class CameraTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("cameras-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task A_board_is_printed_photographed_and_the_camera_used()
    {
        Assert.Contains("Print at 100 %", (await TheProgram.Run("board", "--out", File("board.pdf"))).IsDone().Output, StringComparison.Ordinal);
        Assert.StartsWith("%PDF", System.Text.Encoding.ASCII.GetString(await System.IO.File.ReadAllBytesAsync(File("board.pdf"), TestContext.Current.CancellationToken)), StringComparison.Ordinal);

        Random random = new(6);
        CameraSpec camera = BoardScene.Camera(random, 1000);
        SceneSpec[] views = [.. BoardScene.Views(camera, random, 7)];
        foreach ((SceneSpec view, int i) in views.Select((v, i) => (v, i)))
            await System.IO.File.WriteAllBytesAsync(File($"board-{i}.jpg"), Scene.Render(view).Photo, TestContext.Current.CancellationToken);
        SceneSpec card = new("card", 3)
        {
            Camera = camera,
            Pose = new(10.5, 12, 40, 7),
            Burns = [new(2, -3)],
            Output = new() { Lens = views[0].Output.Lens },
        };
        await System.IO.File.WriteAllBytesAsync(File("card.jpg"), Scene.Render(card).Photo, TestContext.Current.CancellationToken);
        string[] boards = [.. views.Select((_, i) => File($"board-{i}.jpg"))];

        // Progress goes to standard error.
        Answer calibrated = await TheProgram.Run(["camera", .. boards, File("card.jpg"), "--out", File("camera.json"), "--name", "bench phone", "--json"]);
        Assert.True(calibrated.Status == 0, calibrated.Error);
        JsonElement found = calibrated.Json;

        JsonElement focal = found.GetProperty("parameters")[0];
        Assert.InRange(focal.GetProperty("value").GetDouble() - camera.FocalLength, -5 * focal.GetProperty("standardUncertainty").GetDouble(), 5 * focal.GetProperty("standardUncertainty").GetDouble());
        Assert.Equal("NO_BOARD", Assert.Single(found.GetProperty("refused").EnumerateArray()).GetProperty("code").GetString());
        Assert.Contains("more", found.GetProperty("missing").EnumerateArray().Select(m => m.GetString()));

        JsonElement measured = (await TheProgram.Run("measure", File("card.jpg"), "--camera", File("camera.json"), "--json")).IsDone().Json;
        Assert.Equal("bench phone", measured.GetProperty("photo").GetProperty("cameraProfile").GetString());
        JsonElement mark = Assert.Single(measured.GetProperty("marks").EnumerateArray());
        Assert.InRange(mark.GetProperty("u").GetDouble(), 1.98, 2.02);
        Assert.InRange(mark.GetProperty("v").GetDouble(), -3.02, -2.98);

        string said = (await TheProgram.Run("measure", File("card.jpg"), "--camera", File("camera.json"))).IsDone().Output;
        Assert.Contains("measured with the camera profile 'bench phone'", said, StringComparison.Ordinal);

        // A photo whose file names the same camera, by a lens that bends otherwise.
        await System.IO.File.WriteAllBytesAsync(File("bent.jpg"), Scene.Render(card with { Camera = camera with { K1 = camera.K1 - 0.2 } }).Photo, TestContext.Current.CancellationToken);
        said = (await TheProgram.Run("measure", File("bent.jpg"), "--camera", File("camera.json"))).IsDone().Output;
        Assert.Contains("'bench phone' was not used, since the card shows another lens", said, StringComparison.Ordinal);
        Assert.DoesNotContain("measured with the camera profile", said, StringComparison.Ordinal);
        await AuditedAsync(card, camera);

        // The same camera's photo, cut off at one side.
        await System.IO.File.WriteAllBytesAsync(File("cropped.jpg"), Scene.Render(card with { Camera = camera with { Height = 700 } }).Photo, TestContext.Current.CancellationToken);
        (await TheProgram.Run("measure", File("cropped.jpg"), "--camera", File("camera.json"))).IsRefusal(2, "CAMERA_MISFIT");
        await System.IO.File.WriteAllTextAsync(File("words.json"), "no profile", TestContext.Current.CancellationToken);
        Answer words = await TheProgram.Run("measure", File("card.jpg"), "--camera", File("words.json"));
        words.IsRefusal(2, "CAMERA_UNREADABLE");
        Assert.Contains("this file is no camera profile; give a camera's profile, a .json file", words.Error, StringComparison.Ordinal);
        // A photo instead, larger than any profile.
        await System.IO.File.WriteAllBytesAsync(File("large.jpg"), new byte[100_000], TestContext.Current.CancellationToken);
        Answer photo = await TheProgram.Run("measure", File("card.jpg"), "--camera", File("large.jpg"));
        photo.IsRefusal(2, "CAMERA_UNREADABLE");
        Assert.Contains("this file is no camera profile", photo.Error, StringComparison.Ordinal);
    }

    private async Task AuditedAsync(SceneSpec card, CameraSpec camera)
    {
        string folder = Directory.CreateDirectory(File("audit")).FullName;
        System.IO.File.Copy(File("card.jpg"), Path.Combine(folder, "a-card.jpg"));
        System.IO.File.Copy(File("bent.jpg"), Path.Combine(folder, "b-bent.jpg"));
        await System.IO.File.WriteAllBytesAsync(Path.Combine(folder, "c-dark.jpg"), Scene.Render(card with { Camera = camera with { Height = 700 }, Light = new(Exposure: 0.002) }).Photo, TestContext.Current.CancellationToken);
        foreach (string name in (string[])["a-card", "b-bent"])
            await System.IO.File.WriteAllTextAsync(Path.Combine(folder, name + ".truth.json"), """{"marks": [{"u": 2, "v": -3}]}""", TestContext.Current.CancellationToken);
        await System.IO.File.WriteAllTextAsync(Path.Combine(folder, "c-dark.truth.json"), """{"marks": [], "expected": {"error": "TOO_DARK"}}""", TestContext.Current.CancellationToken);

        JsonElement audit = (await TheProgram.Run("audit", folder, "--camera", File("camera.json"), "--json")).IsDone().Json;
        JsonElement[] photos = [.. audit.GetProperty("photos").EnumerateArray()];
        Assert.Equal(["bench phone", null, null], photos.Select(p => p.GetProperty("cameraProfile").GetString()));
        Assert.Equal([false, true, false], photos.Select(p => p.GetProperty("cameraNotUsed").GetString()?.Contains("another lens", StringComparison.Ordinal) == true));
        Assert.Equal(1, audit.GetProperty("summary").GetProperty("cameraNotUsed").GetInt32());
        // Another profile would not mend it.
        Assert.Equal("TOO_DARK", photos[2].GetProperty("refusal").GetProperty("code").GetString());
        string said = (await TheProgram.Run("audit", folder, "--camera", File("camera.json"))).IsDone().Output;
        Assert.Contains("The camera profile was not used for 1 of 3 photos", said, StringComparison.Ordinal);
        Assert.Matches(@"(?m)^b-bent\.jpg .*, profile not used", said);
    }

    [Fact]
    public async Task Photos_of_equal_names_are_told_apart_by_their_folders()
    {
        Random random = new(6);
        CameraSpec camera = BoardScene.Camera(random, 800);
        SceneSpec view = BoardScene.Views(camera, random, 1)[0];
        foreach ((string phone, double focal) in (ReadOnlySpan<(string, double)>)[("a", 4), ("b", 5)])
        {
            Directory.CreateDirectory(File(phone));
            System.IO.File.WriteAllBytes(Path.Combine(_folder, phone, "board-01.jpg"), Scene.Render(view with { Output = view.Output with { Lens = new("phone", focal, 26) } }).Photo);
        }

        Answer answer = await TheProgram.RunIn(_folder, "camera", "a/board-01.jpg", "b/board-01.jpg", "--out", "camera.json");

        Assert.Equal(2, answer.Status);
        Assert.Contains($"{Path.Combine("b", "board-01.jpg")} and {Path.Combine("a", "board-01.jpg")} are of different cameras", answer.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Photos_without_a_board_say_what_to_do()
    {
        await System.IO.File.WriteAllBytesAsync(File("card.jpg"), Scene.Render(new("card", 3) { Camera = new(900, 700, 800), Pose = new(11) }).Photo, TestContext.Current.CancellationToken);

        (await TheProgram.Run("camera", File("card.jpg"), "--out", File("camera.json"))).IsRefusal(3, "CAMERA_FEW_VIEWS");
        Assert.False(System.IO.File.Exists(File("camera.json")));
    }

    private string File(string name) => Path.Combine(_folder, name);
}
