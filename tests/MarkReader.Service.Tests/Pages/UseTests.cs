using MarkReader.Service.Tests.Support;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace MarkReader.Service.Tests.Pages;

/// <summary>That the pages can be used: by keyboard, by touch, on narrow and wide screens, by those who cannot see them.</summary>
public sealed class UseTests(BrowserSite site) : IClassFixture<BrowserSite>
{
    private const int Patience = 60_000;

    [Fact]
    public async Task Nothing_is_cut_off_and_every_control_is_large_enough_at_any_width()
    {
        await using Visit visit = await site.PhoneAsync();
        IPage page = visit.Page;
        Task FitAsync(string name) => page.AtEachWidthAsync(async width =>
        {
            await page.ShouldFitAsync();
            await visit.PictureAsync($"{name}-{width}");
        });
        await page.GotoAsync("/");
        await page.GetByText("Tilted target, pivot offset").TapAsync();
        await FitAsync("measure");
        await page.GetByText("Both marks on one", new() { Exact = true }).TapAsync();
        await FitAsync("measure-both");
        await page.GetByRole(AriaRole.Button, new() { Name = "Load sample photos" }).TapAsync();
        await Expect(page.Locator(".aim-move")).ToBeVisibleAsync(new() { Timeout = Patience });
        await FitAsync("width");
        await page.GetByRole(AriaRole.Link, new() { Name = "Permanent page" }).TapAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Original photos" })).ToBeVisibleAsync();
        await FitAsync("result");
        await page.GetByRole(AriaRole.Link, new() { Name = "Explain it" }).TapAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "What would halve it" })).ToBeVisibleAsync();
        await FitAsync("budget");
        await page.GotoAsync("/results");
        await FitAsync("results");
        visit.ShouldBeQuiet();
    }

    [Fact]
    public async Task Everything_can_be_done_by_keyboard()
    {
        await using Visit visit = await site.DeskAsync();
        IPage page = visit.Page;
        await page.GotoAsync("/");
        await page.Keyboard.PressAsync("Tab");
        await Expect(page.GetByText("Skip to the content")).ToBeFocusedAsync();

        Dictionary<string, string> typed = new() { ["nearPath"] = "80", ["farPath"] = "480" };
        Dictionary<string, string> chosen = new() { ["near"] = Photos.NearPath, ["far"] = Photos.FarPath };
        List<string> reached = [];
        for (int step = 0; step < 60 && !reached.Contains("find"); step++)
        {
            await page.Keyboard.PressAsync("Tab");
            string name = await page.EvaluateAsync<string>("() => document.activeElement.id || document.activeElement.name || ''");
            reached.Add(name);
            Assert.True(await page.EvaluateAsync<bool>("() => document.activeElement.matches(':focus-visible')"), name);
            if (typed.TryGetValue(name, out string? text))
                await page.Keyboard.TypeAsync(text);
            if (chosen.TryGetValue(name, out string? file))
                await page.SetInputFilesAsync("#" + name, file);
        }
        foreach (string name in (string[])["near", "far", "shows", "unit", "nearPath", "farPath", "pathUncertainty", "find"])
            Assert.Contains(name, reached);
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.Locator(".aim-move")).ToBeVisibleAsync(new() { Timeout = Patience });
        await Expect(page.Locator("#outcome")).ToBeFocusedAsync();
        await page.Keyboard.PressAsync("Tab");
        await page.Keyboard.PressAsync("ArrowRight");
        await Expect(page.Locator("#outcome .aim-photo")).ToBeVisibleAsync();
        visit.ShouldBeQuiet();
    }

    [Fact]
    public async Task No_fault_is_found_by_the_accessibility_checker_light_and_dark()
    {
        await using Visit visit = await site.PhoneAsync();
        IPage page = visit.Page;
        Task CheckAsync(string? name = null) => page.LightAndDarkAsync(async scheme =>
        {
            await page.ShouldBeAccessibleAsync();
            if (name is not null)
                await visit.PictureAsync($"{name}-{scheme}");
        });
        await page.GotoAsync("/");
        await CheckAsync();
        await visit.FillAsync(null, null, "480", "80");
        await page.Locator("#find").TapAsync();
        await Expect(page.Locator("#near-error")).Not.ToBeEmptyAsync();
        await CheckAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Load sample photos" }).TapAsync();
        await Expect(page.Locator(".aim-move")).ToBeVisibleAsync(new() { Timeout = Patience });
        await CheckAsync("phone");
        await page.GetByRole(AriaRole.Link, new() { Name = "Permanent page" }).TapAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Original photos" })).ToBeVisibleAsync();
        await CheckAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Explain it" }).TapAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "What would halve it" })).ToBeVisibleAsync();
        await CheckAsync();
        await page.GotoAsync("/results");
        await CheckAsync();
        visit.ShouldBeQuiet("400");
    }
}
