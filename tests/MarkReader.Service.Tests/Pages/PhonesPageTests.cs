using MarkReader.Service.Tests.Support;
using Microsoft.Playwright;
using OpenCvSharp;
using static Microsoft.Playwright.Assertions;

namespace MarkReader.Service.Tests.Pages;

public sealed class PhonesPageTests
{
    [Fact]
    public async Task The_code_on_the_page_is_read_and_lets_a_phone_in()
    {
        await using BrowserSite site = new(phones: true);
        await site.InitializeAsync();
        Uri address = PhoneSite.AddressOf(site);
        await using Visit visit = await site.PhoneAsync();
        IPage page = visit.Page;
        await page.GotoAsync("/");
        await page.GetByRole(AriaRole.Link, new() { Name = "Phones", Exact = true }).TapAsync();
        await Expect(page.Locator(".join-address").First).ToHaveTextAsync(address.GetLeftPart(UriPartial.Authority));
        List<string> links = [];
        await page.LightAndDarkAsync(async scheme =>
        {
            await page.ShouldFitAsync();
            await page.ShouldBeAccessibleAsync();
            await visit.PictureAsync($"phones-{scheme}");
            links.Add(Read(await page.Locator(".join-code").First.ScreenshotAsync()));
        });
        await page.AtEachWidthAsync(_ => page.ShouldFitAsync());
        string link = Assert.Single(links.Distinct());
        Assert.StartsWith(address + "join?key=", link, StringComparison.Ordinal);

        await using Visit other = await site.PhoneAsync();
        await other.Page.GotoAsync(address + "visits");
        await Expect(other.Page.GetByRole(AriaRole.Heading, new() { Name = "Join first" })).ToBeVisibleAsync();
        await other.Page.LightAndDarkAsync(async scheme =>
        {
            await other.Page.ShouldFitAsync();
            await other.Page.ShouldBeAccessibleAsync();
            await other.PictureAsync($"join-first-{scheme}");
        });
        await other.Page.GotoAsync(link);
        await Expect(other.Page).ToHaveURLAsync(address + "visits");
        await Expect(other.Page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToBeVisibleAsync();

        await page.GetByRole(AriaRole.Button, new() { Name = "New key" }).TapAsync();
        await Expect(page.GetByText("There is a new key.")).ToBeVisibleAsync();
        Assert.NotEqual(link, Read(await page.Locator(".join-code").First.ScreenshotAsync()));
        await other.Page.ReloadAsync();
        await Expect(other.Page.GetByRole(AriaRole.Heading, new() { Name = "Join first" })).ToBeVisibleAsync();
        visit.ShouldBeQuiet();
    }

    private static string Read(byte[] picture)
    {
        using Mat image = Cv2.ImDecode(picture, ImreadModes.Grayscale);
        using QRCodeDetector detector = new();
        // As a phone does: from nearer and from farther until it reads; no reader of codes reads every one at every size.
        foreach (double scale in (double[])[1, 2, 1.5, 0.75, 3])
        {
            using Mat seen = new();
            Cv2.Resize(image, seen, default, scale, scale, InterpolationFlags.Cubic);
            if (detector.DetectAndDecode(seen, out _) is { Length: > 0 } text)
                return text;
        }

        return "";
    }
}
