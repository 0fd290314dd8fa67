using MarkReader.CommandLine.Tests.Support;
using SixLabors.ImageSharp;

namespace MarkReader.CommandLine.Tests.Commands;

public sealed class CardTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("cards-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Theory]
    [InlineData("card.pdf", "%PDF")]
    [InlineData("card.svg", "<")]
    public async Task A_card_is_written_in_the_format_that_its_name_asks_for(string name, string start)
    {
        (await TheProgram.Run("card", "--out", At(name))).IsDone();
        Assert.StartsWith(start, await File.ReadAllTextAsync(At(name), TestContext.Current.CancellationToken), StringComparison.Ordinal);
        Assert.Single(Directory.GetFileSystemEntries(_folder));
    }

    [Theory]
    [InlineData("plate", 50)]
    [InlineData("bed", 150)]
    public async Task A_png_card_has_at_least_20_px_per_mm(string kind, double side)
    {
        (await TheProgram.Run("card", "--out", At("card.png"), "--kind", kind)).IsDone();
        using Image picture = Image.Load(At("card.png"));
        Assert.Equal(picture.Width, picture.Height);
        Assert.True(picture.Width >= 20 * side, $"{picture.Width} px");
    }

    [Fact]
    public async Task A_file_that_is_there_is_replaced()
    {
        await File.WriteAllTextAsync(At("card.svg"), "old", TestContext.Current.CancellationToken);
        (await TheProgram.Run("card", "--out", At("card.svg"), "--paper", "Letter")).IsDone();
        Assert.DoesNotContain("old", await File.ReadAllTextAsync(At("card.svg"), TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("OPTION_MISSING")]
    [InlineData("CARD_FORMAT_UNKNOWN", "--out", "card.gif")]
    [InlineData("CHOICE_UNKNOWN", "--out", "card.pdf", "--kind", "poster")]
    [InlineData("PAPER_UNKNOWN", "--out", "card.pdf", "--paper", "a5")]
    [InlineData("OUTPUT_NOT_WRITABLE", "--out", "nowhere/card.pdf")]
    [InlineData("OUTPUT_NOT_WRITABLE", "--out", "folder.pdf")]
    public async Task What_cannot_be_written_is_refused_and_leaves_no_file(string code, params string[] options)
    {
        Directory.CreateDirectory(At("folder.pdf"));
        (await TheProgram.RunIn(_folder, ["card", .. options])).IsRefusal(2, code);
        Assert.Equal(At("folder.pdf"), Assert.Single(Directory.GetFileSystemEntries(_folder)));
    }

    private string At(string name) => Path.Combine(_folder, name);
}
