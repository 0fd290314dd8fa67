using System.Globalization;
using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using MarkReader.Service.Tests.Support;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace MarkReader.Service.Tests.Pages;

/// <summary>The user shows the program a mark, measures the print, and sees where the uncertainty comes from.</summary>
public sealed class ShowMarkTests(BrowserSite site) : IClassFixture<BrowserSite>
{
    private const int Patience = 60_000;

    [Fact]
    public async Task A_tapped_mark_is_measured_and_its_budget_shown_on_a_telephone()
    {
        await using Visit visit = await site.PhoneAsync();
        IPage page = visit.Page;
        await page.GotoAsync("/");
        await visit.FillAsync(Photos.NearPath, Photos.FarPath);
        await Expect(page.Locator("#far-status")).ToContainTextAsync("2 marks seen", new() { Timeout = Patience });
        await Expect(page.Locator("#far-facts")).ToContainTextAsync("8 of 8 markers");
        ILocator slot = page.Locator("[data-slot='far']");
        await slot.GetByText("Show the program the mark").TapAsync();
        await slot.Locator("[data-tap='farAt']").TapAsync();
        ILocator dialog = page.Locator("#tap");
        await Expect(dialog.Locator("#tap-spots button")).ToHaveCountAsync(2, new() { Timeout = Patience });
        await Expect(dialog.GetByRole(AriaRole.Heading)).ToHaveTextAsync("Tap the far mark");
        await visit.PictureAsync("phone-tap");

        // A finger, half a millimetre beside the middle of the second ring.
        LocatorBoundingBoxResult ring = (await dialog.Locator("circle.ring").Nth(1).BoundingBoxAsync())!;
        await page.Touchscreen.TapAsync(ring.X + (ring.Width / 2) + 4, ring.Y + (ring.Height / 2) + 4);
        await Expect(dialog.Locator("path.cross")).ToHaveCountAsync(2);
        await visit.PictureAsync("phone-tapped");
        double x = await NumberAsync(page, "#tap-x");
        await dialog.Locator("#tap-photo").FocusAsync();
        await page.Keyboard.PressAsync("ArrowRight");
        Assert.Equal(x + 1, await NumberAsync(page, "#tap-x"), 0.11);
        await dialog.Locator("#tap-use").TapAsync();
        await Expect(dialog).ToBeHiddenAsync();
        Assert.Matches(@"^\d+\.\d,\d+\.\d$", await page.InputValueAsync("#farAt"));

        await page.GetByText("Print and tape", new() { Exact = true }).TapAsync();
        await page.FillAsync("#rulerU", "40");
        await page.FillAsync("#rulerV", "40,0");
        await page.Locator("#find").TapAsync();
        await Expect(page.Locator("#outcome .aim-move")).ToContainTextAsync("7.0 mm left and 4.3 mm down", new() { Timeout = Patience });
        ILocator budget = page.Locator("#outcome .budget").First;
        await Expect(budget).ToContainTextAsync("path lengths");
        await Expect(budget).ToContainTextAsync("print scale");
        await Expect(budget.Locator("td.number").First).ToContainTextAsync(" mm");
        double[] shares = await budget.Locator("rect.part").EvaluateAllAsync<double[]>("parts => parts.map(part => Number(part.getAttribute('width')))");
        Assert.True(shares.Length >= 2);
        Assert.InRange(shares.Sum(), 99, 101);
        Assert.Equal(shares[..^1].OrderDescending(), shares[..^1]);
        await page.GetByText("The marks and the photos").TapAsync();
        await Expect(page.Locator("#outcome")).ToContainTextAsync("Rulers 40 mm and 40 mm.");
        await visit.PictureAsync("phone-budget");
        visit.ShouldBeQuiet();
    }

    [Fact]
    public async Task Spots_can_be_chosen_by_keyboard_and_the_program_left_to_find_the_mark_again()
    {
        await using Visit visit = await site.DeskAsync();
        IPage page = visit.Page;
        await page.GotoAsync("/");
        await page.SetInputFilesAsync("#far", Photos.FarPath);
        await Expect(page.Locator("#far-status")).ToContainTextAsync("2 marks seen", new() { Timeout = Patience });
        await page.Locator("[data-slot='far'] .naming summary").PressAsync("Enter");
        await page.Locator("[data-tap='farAt']").PressAsync("Enter");
        ILocator spot = page.Locator("#tap-spots button").First;
        await Expect(spot).ToContainTextAsync("mark, ", new() { Timeout = Patience });
        await spot.PressAsync("Enter");
        await page.GetByText("Closer", new() { Exact = true }).ClickAsync();
        await visit.PictureAsync("desk-tap");
        AxeResult seen = await page.Locator("#tap").RunAxe();
        Assert.Empty(seen.Violations.Select(v => $"{v.Id}: {v.Nodes[0].Html}"));
        await page.Locator("#tap-use").PressAsync("Enter");
        await Expect(page.Locator("#farAt")).Not.ToHaveValueAsync("");
        await Expect(page.Locator("[data-tap='farAt']")).ToBeFocusedAsync();
        await page.Keyboard.PressAsync("Enter");
        await page.Locator("#tap-forget").PressAsync("Enter");
        await Expect(page.Locator("#farAt")).ToHaveValueAsync("");
        await page.Locator("[data-tap='farAt']").PressAsync("Enter");
        await page.Keyboard.PressAsync("Escape");
        await Expect(page.Locator("#tap")).ToBeHiddenAsync();
        visit.ShouldBeQuiet();
    }

    [Fact]
    public async Task A_photo_without_a_sure_mark_asks_to_be_shown_it()
    {
        await using Visit visit = await site.PhoneAsync();
        IPage page = visit.Page;
        await page.GotoAsync("/");
        await page.SetInputFilesAsync("#near", Path.Combine(Photos.Folder, "no-mark.jpg"));
        await Expect(page.Locator("#near-error")).ToContainTextAsync("No mark is seen", new() { Timeout = Patience });
        await Expect(page.Locator("[data-tap='nearAt']")).ToBeVisibleAsync();
        await page.FillAsync("#nearAt", "1200,900");
        await Expect(page.Locator("#near-error")).ToBeEmptyAsync();
        await Expect(page.Locator("#near-status")).ToContainTextAsync("The mark that you show is measured.");
        visit.ShouldBeQuiet("422");
    }

    private static async Task<double> NumberAsync(IPage page, string field) => double.Parse(await page.InputValueAsync(field), CultureInfo.InvariantCulture);
}
