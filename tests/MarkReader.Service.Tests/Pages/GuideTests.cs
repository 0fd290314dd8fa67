using System.Buffers.Binary;
using System.Net.Http.Json;
using System.Text.Json;
using System.Text.RegularExpressions;
using MarkReader.Guide.Playing;
using MarkReader.Service.Guide;
using MarkReader.Service.Tests.Support;
using Microsoft.Playwright;

namespace MarkReader.Service.Tests.Pages;

/// <summary>That the guide says what the program says, and can be read by everybody.</summary>
public sealed partial class GuideTests(BrowserSite site) : IClassFixture<BrowserSite>
{
    private const string Stale = "the guide is not what the program says now: run tools/guide";

    private static readonly string s_repository = Path.GetFullPath(Path.Combine(Photos.Folder, "..", ".."));
    private static readonly string s_folder = GuideBook.FolderIn(Path.Combine(s_repository, "src", "MarkReader.Service", "wwwroot"));
    private static readonly GuideBook s_book = GuideBook.Read(s_folder);

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_first_chapters_say_what_the_program_says_when_they_are_played_again()
    {
        await using Visit visitor = await site.PhoneAsync(390);
        FirstVisit visit = new(visitor.Page, ProgramWords.Read(s_repository));
        int chapter = 0;
        await foreach (Stop stop in visit.PlayAsync().WithCancellation(Cancellation))
        {
            ShouldSay(s_book.Chapters[chapter++], stop.Chapter);
            if (stop.Chapter.Name == "turn")
                break;
        }

        Assert.True(chapter >= 6, Stale);
        visitor.ShouldBeQuiet();
    }

    /// <summary>With the marks of the guide's visit in place of fresh photos: the same in seconds.</summary>
    [Fact]
    public async Task Every_later_chapter_says_what_the_program_says_at_that_place()
    {
        await using Visit visitor = await site.PhoneAsync(390);
        VisitPages pages = new(visitor.Page, ProgramWords.Read(s_repository));
        using HttpResponseMessage begun = await site.Client.PostAsJsonAsync("/api/visits", new { practice = new { seed = s_book.Machine } }, Cancellation);
        string address = $"/visits/{(await begun.JsonAsync()).GetProperty("id").GetInt64()}";
        int added = 0;
        foreach (GuideChapter chapter in s_book.Chapters.Where(c => c.Name != "practise" && !VisitPages.OfPhotos.Contains(c.Name)))
        {
            for (; added < chapter.After; added++)
            {
                using HttpResponseMessage answer = await site.Client.SendAsync(HttpMethod.Post, $"/api{address}/events", s_book.Events[added].GetRawText(), ("Idempotency-Key", $"guide{added}"));
                Assert.True(answer.IsSuccessStatusCode, $"{Stale} (event {added + 1} is refused)");
            }

            ShouldSay(chapter, (await pages.ShowAsync(chapter.Name, address, added)).Chapter);
        }

        Assert.Equal(s_book.Events.Count, added);
        visitor.ShouldBeQuiet();
    }

    [Fact]
    public void Every_chapter_has_a_picture_that_is_small_and_as_large_as_is_said()
    {
        Assert.True(s_book.Chapters.Count >= 10, Stale);
        Assert.All(s_book.Chapters, chapter =>
        {
            byte[] png = File.ReadAllBytes(Path.Combine(s_folder, chapter.Picture!.File));
            Assert.InRange(png.Length, 1000, 64_000);
            // Width and height as the PNG's header (IHDR, RFC 2083) has them.
            Assert.Equal((chapter.Picture.Width, chapter.Picture.Height), (BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(16)), BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(20))));
        });
        Assert.Equal(s_book.Chapters.Select(c => c.Picture!.File).Order(StringComparer.Ordinal), Directory.GetFiles(s_folder, "*.png").Select(Path.GetFileName).Order(StringComparer.Ordinal));
    }

    [Theory]
    [InlineData(360)]
    [InlineData(768)]
    [InlineData(1280)]
    public async Task The_page_fits_and_no_fault_is_found_by_the_accessibility_checker(int width)
    {
        await using Visit visitor = width == 1280 ? await site.DeskAsync() : await site.PhoneAsync(width, dark: width == 768);
        await visitor.Page.GotoAsync("/visits");
        await visitor.Page.ShouldFitAsync();
        await visitor.Page.GetByRole(AriaRole.Main).GetByRole(AriaRole.Link, new() { NameRegex = FirstVisitName() }).ClickAsync();
        await visitor.Page.WaitForURLAsync("**/guide");
        foreach (ILocator picture in await visitor.Page.Locator("main img").AllAsync())
        {
            await picture.ScrollIntoViewIfNeededAsync();
            await Assertions.Expect(picture).ToHaveJSPropertyAsync("complete", true);
            Assert.True(await picture.EvaluateAsync<bool>("i => i.naturalWidth === Number(i.getAttribute('width')) && i.naturalHeight === Number(i.getAttribute('height')) && i.alt.length > 20"));
        }

        await visitor.Page.ShouldFitAsync();
        await visitor.Page.ShouldBeAccessibleAsync();
        await visitor.PictureAsync($"guide-{width}");
        // Names of texts or of buttons that are not there come out as they stand in the source.
        string text = await visitor.Page.Locator("main").InnerTextAsync();
        Assert.DoesNotMatch(UnresolvedName(), text);
        visitor.ShouldBeQuiet();
    }

    private static void ShouldSay(GuideChapter kept, GuideChapter now) => Assert.True(
        Words(kept) == Words(now), $"{Stale}\nchapter {kept.Name}\nguide:   {Words(kept)}\nprogram: {Words(now)}");

    // Last digits may differ between processors.
    private static string Words(GuideChapter chapter) =>
        Number().Replace(JsonSerializer.Serialize(chapter with { Picture = null }), "#");

    [GeneratedRegex(@"\d+([.,/]\d+)*")]
    private static partial Regex Number();

    [GeneratedRegex("^Your first visit")]
    private static partial Regex FirstVisitName();

    [GeneratedRegex(@"[{}]|\bchapter\.|\b(pick|photo|other|list)\.[a-z]")]
    private static partial Regex UnresolvedName();
}
