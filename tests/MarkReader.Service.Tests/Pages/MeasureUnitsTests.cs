using System.Text.Json;
using System.Text.RegularExpressions;
using MarkReader.Service.Tests.Support;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace MarkReader.Service.Tests.Pages;

public sealed partial class MeasureUnitsTests(BrowserSite site) : IClassFixture<BrowserSite>
{
    private const int Patience = 60_000;

    [Fact]
    public async Task Inches_and_a_decimal_comma_hold_on_every_measuring_page_and_what_is_kept_stays_in_mm()
    {
        await using Visit visit = await site.PhoneAsync();
        IPage page = visit.Page;
        await page.GotoAsync("/display");
        await page.GetByText("inches", new() { Exact = true }).TapAsync();
        await page.CheckAsync("input[value='comma']", new() { Force = true });
        await page.GetByRole(AriaRole.Button, new() { Name = "Save" }).TapAsync();
        await page.WaitForURLAsync("**/display?saved=true");

        await page.GotoAsync("/");
        await Expect(page.Locator("input[name='unit'][value='in']")).ToBeCheckedAsync();
        string start = await WordsAsync(page);
        Assert.Contains("long lines on the page measure 3,937 in", start, StringComparison.Ordinal);
        Assert.DoesNotMatch(Metric(), start);
        await page.GetByRole(AriaRole.Button, new() { Name = "Load sample photos" }).TapAsync();
        // From the far mark, 5.76, 5.12 mm, to the aim point, −1.2, 0.8 mm.
        await Expect(page.Locator("#outcome .aim-move")).ToContainTextAsync(Move(), new() { Timeout = Patience });
        Assert.Equal("3,14961", await page.InputValueAsync("#nearPath"));
        Assert.Equal("18,8976", await page.InputValueAsync("#farPath"));

        // The swapped paths are refused in inches, and a comma before three digits is a decimal comma.
        await page.FillAsync("#nearPath", "18,898");
        await page.FillAsync("#farPath", "3,150");
        await page.GetByText("Print and tape", new() { Exact = true }).TapAsync();
        await page.FillAsync("#rulerU", "1,575");
        await page.FillAsync("#rulerV", "1,575");
        await page.Locator("#find").TapAsync();
        await Expect(page.Locator("#farPath-error")).ToContainTextAsync("3,15", new() { Timeout = Patience });
        Assert.DoesNotMatch(Metric(), await WordsAsync(page));
        await page.FillAsync("#nearPath", "abc");
        await page.FillAsync("#farPath", "18,898");
        await page.Locator("#find").TapAsync();
        await Expect(page.Locator("#nearPath-error")).ToContainTextAsync("like 3, 3.15 or 3,15", new() { Timeout = Patience });
        await page.FillAsync("#nearPath", "3,150");
        await page.Locator("#find").TapAsync();
        await Expect(page.Locator("#earlier-list li").First).ToContainTextAsync("paths 3,15 in and 18,898 in", new() { Timeout = Patience });
        await visit.PictureAsync("phone-inches");
        Assert.DoesNotMatch(Metric(), await WordsAsync(page));

        await page.GotoAsync("/results");
        Assert.Matches(@"aim −0,047\d; \+0,03\d\d in", await WordsAsync(page));
        Assert.DoesNotMatch(Metric(), await WordsAsync(page));
        await page.Locator(".table-of-results a").First.TapAsync();
        await Expect(page.Locator(".aim-move")).ToContainTextAsync(Move());
        await visit.PictureAsync("phone-inches-result");
        await Expect(page.Locator(".picture-unit")).ToHaveTextAsync("Lengths written in this picture are in mm.");
        string result = await WordsAsync(page);
        Assert.Contains("Rulers 1,575 in and 1,575 in.", result, StringComparison.Ordinal);
        Assert.Contains("k = 1,96", result, StringComparison.Ordinal);
        Assert.DoesNotMatch(Metric(), result);
        Assert.DoesNotMatch(@"\d\.\d", Version().Replace(result, ""));

        string number = page.Url.Split('/')[^1];
        await page.GotoAsync($"/results/{number}/budget");
        string budget = await WordsAsync(page);
        Assert.DoesNotMatch(Metric(), budget);
        Assert.DoesNotMatch(@".{0,40}\d\.\d.{0,20}", budget.Replace("10.6 µm", "", StringComparison.Ordinal));

        string kept = await site.Client.GetStringAsync(new Uri("/api/aims/" + number, UriKind.Relative), TestContext.Current.CancellationToken);
        using JsonDocument answer = JsonDocument.Parse(kept);
        Assert.Equal(3.15 * 25.4, answer.RootElement.GetProperty("inputs").GetProperty("nearPath").GetDouble(), 1e-9);
        Assert.Equal(1.575 * 25.4, answer.RootElement.GetProperty("inputs").GetProperty("card").GetProperty("rulerU").GetDouble(), 1e-9);
        visit.ShouldBeQuiet("400");
    }

    /// <summary>Every word of the page, shown or folded away; the drawing on the photo is kept as it was made, which the page says.</summary>
    private static Task<string> WordsAsync(IPage page) => page.EvaluateAsync<string>(
        """
        () => {
          const main = document.querySelector('main').cloneNode(true);
          for (const drawing of main.querySelectorAll('svg, .picture-unit')) drawing.remove();
          return main.textContent.replace(/\s+/g, ' ');
        }
        """);

    [GeneratedRegex(@"\smm\b")]
    private static partial Regex Metric();

    [GeneratedRegex(@"0,27\d\sin\sleft and 0,1[67]\d\sin\sdown")]
    private static partial Regex Move();

    [GeneratedRegex(@"\b\d+\.\d+\.\d+\S*")]
    private static partial Regex Version();
}
