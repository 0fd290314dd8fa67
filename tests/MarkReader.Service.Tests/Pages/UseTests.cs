using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using MarkReader.Service.Tests.Support;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace MarkReader.Service.Tests.Pages;

/// <summary>That the pages can be used: by keyboard, by touch, on narrow and wide screens, by those who cannot see them.</summary>
public sealed class UseTests(BrowserSite site) : IClassFixture<BrowserSite>
{
    private const int Patience = 60_000;

    /// <summary>Visible controls lower or narrower than 48 px, and whatever reaches past the screen's edge.</summary>
    private const string Faults =
        """
        () => {
          const faults = [];
          const wide = document.documentElement.clientWidth;
          for (const element of document.querySelectorAll('body *')) {
            const box = element.getBoundingClientRect();
            if (!box.width || !box.height || element.closest('.unseen, .skip, svg')) continue;
            const name = `${element.tagName} ${element.className} ${(element.textContent ?? '').trim().slice(0, 40)}`;
            if (box.right > wide + 0.5 || box.left < -0.5) faults.push(`past the edge: ${name} ${box.left} ${box.right}`);
            const control = element.matches('button, summary, select, input[type=text], nav a, .jumps a, .button, .choice label, .table-of-results a, .foot a, .brand');
            if (control && (box.height < 47.5 || box.width < 47.5)) faults.push(`small: ${name} ${box.width} ${box.height}`);
          }
          if (document.documentElement.scrollWidth > wide) faults.push(`scrolls sideways: ${document.documentElement.scrollWidth} > ${wide}`);
          return faults;
        }
        """;

    [Theory]
    [InlineData(320)]
    [InlineData(360)]
    [InlineData(768)]
    [InlineData(1280)]
    public async Task Nothing_is_cut_off_and_every_control_is_large_enough(int width)
    {
        await using Visit visit = await site.PhoneAsync(width);
        IPage page = visit.Page;
        await page.GotoAsync("/");
        await page.GetByText("Tilted target, pivot offset").TapAsync();
        Assert.Empty(await page.EvaluateAsync<string[]>(Faults));
        await page.GetByText("Both marks on one", new() { Exact = true }).TapAsync();
        Assert.Empty(await page.EvaluateAsync<string[]>(Faults));
        await page.GetByRole(AriaRole.Button, new() { Name = "Load sample photos" }).TapAsync();
        await Expect(page.Locator(".aim-move")).ToBeVisibleAsync(new() { Timeout = Patience });
        Assert.Empty(await page.EvaluateAsync<string[]>(Faults));
        await visit.PictureAsync($"width-{width}");
        await page.GetByRole(AriaRole.Link, new() { Name = "Permanent page" }).TapAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Original photos" })).ToBeVisibleAsync();
        Assert.Empty(await page.EvaluateAsync<string[]>(Faults));
        await visit.PictureAsync($"result-{width}");
        await page.GotoAsync("/results");
        Assert.Empty(await page.EvaluateAsync<string[]>(Faults));
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

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task No_fault_is_found_by_the_accessibility_checker(bool dark)
    {
        await using Visit visit = await site.PhoneAsync(dark: dark);
        IPage page = visit.Page;
        await page.GotoAsync("/");
        await CheckAsync(page);
        await visit.FillAsync(null, null, "480", "80");
        await page.Locator("#find").TapAsync();
        await Expect(page.Locator("#near-error")).Not.ToBeEmptyAsync();
        await CheckAsync(page);
        await page.GetByRole(AriaRole.Button, new() { Name = "Load sample photos" }).TapAsync();
        await Expect(page.Locator(".aim-move")).ToBeVisibleAsync(new() { Timeout = Patience });
        await CheckAsync(page);
        await visit.PictureAsync(dark ? "phone-dark" : "phone-light");
        await page.GetByRole(AriaRole.Link, new() { Name = "Permanent page" }).TapAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Original photos" })).ToBeVisibleAsync();
        await CheckAsync(page);
        await page.GotoAsync("/results");
        await CheckAsync(page);
        visit.ShouldBeQuiet("400");
    }

    private static async Task CheckAsync(IPage page)
    {
        AxeResult result = await page.RunAxe();
        Assert.Empty(result.Violations.Select(fault => $"{fault.Id}: {fault.Help} {string.Join(" | ", fault.Nodes.Select(node => node.Html))}"));
        Assert.NotEmpty(result.Passes);
    }
}
