using System.Text.Json;
using MarkReader.CommandLine.Tests.Support;

namespace MarkReader.CommandLine.Tests.Commands;

[Collection(nameof(PhotoTests))]
public sealed class MeasureTests(Photos photos)
{
    [Fact]
    public async Task Json_holds_the_marks_within_a_fiftieth_of_a_millimetre()
    {
        JsonElement marks = (await TheProgram.Run("measure", photos["both.jpg"], "--json")).IsDone().Json.GetProperty("marks");
        Assert.Equal(2, marks.GetArrayLength());
        Assert.Equal(Photos.AimU + (Photos.SlopeU * 0.48), marks[0].GetProperty("u").GetDouble(), 0.02);
        Assert.Equal(Photos.AimV + (Photos.SlopeV * 0.48), marks[0].GetProperty("v").GetDouble(), 0.02);
        Assert.Equal(Photos.AimU + (Photos.SlopeU * 0.08), marks[1].GetProperty("u").GetDouble(), 0.02);
    }

    [Fact]
    public async Task The_table_has_a_line_for_each_mark()
    {
        string[] lines = (await TheProgram.Run("measure", photos["both.jpg"])).IsDone().Output.Split('\n');
        Assert.StartsWith("card plate: 8 markers", lines[0], StringComparison.Ordinal);
        Assert.Matches(@"^photo: blur \d\.\d px, white paper at \d+ % of full light, clipped ", lines[1]);
        Assert.Matches(@"^mark +u/mm +v/mm +region/mm +diameter/mm$", lines[2]);
        Assert.Matches(@"^1 +-2\.8\d\d +\+3\.7\d\d +0\.\d{3} x 0\.\d{3} +\d\.\d\d$", lines[3]);
        Assert.Matches(@"^2 +\+0\.7\d\d +-1\.0\d\d +0\.\d{3} x 0\.\d{3} +\d\.\d\d$", lines[4]);
    }

    [Theory]
    [InlineData("blank.png", 3, "NO_MARK")]
    [InlineData("empty.jpg", 2, "PHOTO_EMPTY")]
    [InlineData("words.jpg", 2, "PHOTO_FORMAT")]
    [InlineData("cut.jpg", 2, "PHOTO_TRUNCATED")]
    [InlineData("huge.png", 2, "PHOTO_TOO_LARGE")]
    [InlineData("nowhere.jpg", 2, "FILE_MISSING")]
    [InlineData("", 2, "FILE_IS_FOLDER")]
    public async Task Each_photo_that_cannot_be_used_has_its_own_refusal(string name, int status, string code)
    {
        Answer answer = await TheProgram.Run("measure", photos[name], "--json");
        answer.IsRefusal(status, code);
        JsonElement error = answer.Json.GetProperty("error");
        Assert.Equal(code, error.GetProperty("code").GetString());
        Assert.Contains(error.GetProperty("message").GetString()!, answer.Error, StringComparison.Ordinal);
        Assert.Contains(error.GetProperty("hint").GetString()!, answer.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_file_too_large_for_a_photo_is_not_read()
    {
        string path = photos["large.bin"];
        using (FileStream file = File.Create(path))
            file.SetLength(41 * 1024 * 1024);
        (await TheProgram.Run("measure", path)).IsRefusal(2, "FILE_TOO_LARGE");
        File.Delete(path);
    }

    [Fact]
    public async Task Every_stage_s_picture_is_written_to_the_debug_folder()
    {
        string folder = photos["stages"];
        (await TheProgram.Run("measure", photos["near.jpg"], "--debug-dir", folder)).IsDone();
        Assert.True(Directory.GetFiles(folder, "*.png").Length >= 4);
    }
}
