using System.Text.Json;
using System.Text.RegularExpressions;
using MarkReader.Service.Tests.Support;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace MarkReader.Service.Tests.Pages;

/// <summary>The machines' pages in a browser: a machine is made, changed, exported, read again and deleted.</summary>
public sealed class MachinePagesTests(BrowserSite site) : IClassFixture<BrowserSite>
{
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task A_machine_is_made_from_a_shape_by_touch_with_or_without_scripts(bool scripts)
    {
        await using Visit visit = await site.PhoneAsync(scripts: scripts);
        IPage page = visit.Page;
        await page.GotoAsync("/machines");
        await page.GetByRole(AriaRole.Link, new() { Name = "Small desktop" }).TapAsync();
        await page.Locator("#name").FillAsync($"by the door {scripts}");
        await page.Locator("#leg1-nearPath").FillAsync("92,5");
        await page.Locator("#leg1-travel").FillAsync("250");
        await page.Locator("#leg1-upperLeft").SelectOptionAsync("");
        await page.Locator("#leg1-upperRight").SelectOptionAsync("screw B");
        await page.Locator("#save").TapAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync($"by the door {scripts}");
        await Expect(page.GetByRole(AriaRole.Status)).ToHaveTextAsync("Kept.");
        await Expect(page.Locator("#leg1-farPath")).ToHaveValueAsync("342.5");

        JsonElement leg = (await DocumentAsync(page)).GetProperty("legs")[0];
        Assert.Equal((92.5, 342.5), (leg.GetProperty("nearPath").GetDouble(), leg.GetProperty("farPath").GetDouble()));
        Assert.Equal("upperRight", leg.GetProperty("frame").GetProperty("screws")[1].Text("at"));
        await page.GetByRole(AriaRole.Link, new() { Name = "Begin a visit" }).TapAsync();
        await Expect(page.Locator("#machine")).ToHaveValueAsync(new Regex("^[0-9]+$"));
        await page.GetByRole(AriaRole.Button, new() { Name = "Begin", Exact = true }).TapAsync();
        await Expect(page).ToHaveURLAsync(new Regex("/visits/[0-9]+$"));
        await page.GotoAsync("/machines");
        await Expect(page.GetByRole(AriaRole.Link, new() { NameRegex = new($"by the door {scripts} bed 300 × 200 mm last visit 20") })).ToBeVisibleAsync();
        visit.ShouldBeQuiet();
    }

    [Fact]
    public async Task What_is_wrong_stands_beside_its_field_and_what_was_entered_stays()
    {
        await using Visit visit = await site.PhoneAsync();
        IPage page = visit.Page;
        await page.GotoAsync("/machines/new?preset=medium-bench");
        await page.Locator("#leg1-nearPath").FillAsync("ten");
        await page.Locator("#leg2-arm").FillAsync("1000");
        await page.Locator("#leg2-lowerLeft").SelectOptionAsync("screw A");
        await page.Locator("#save").TapAsync();
        await Expect(page.Locator("#leg1-nearPath-error")).ToContainTextAsync("not a number");
        await Expect(page.Locator("#leg1-nearPath")).ToHaveValueAsync("ten");
        await Expect(page.Locator("#leg1-nearPath")).ToHaveAttributeAsync("aria-invalid", "true");
        await Expect(page.Locator("#leg2-arm-error")).ToContainTextAsync("not between 3 and 500 mm");
        await Expect(page.Locator("#leg2-frame-error")).ToContainTextAsync("the same name");
        await page.ShouldBeAccessibleAsync();
        await visit.PictureAsync("machine-wrong");
        visit.ShouldBeQuiet("400");
    }

    [Fact]
    public async Task Inches_with_a_decimal_comma_change_only_what_was_typed()
    {
        long id = await AddAsync(Machines.Named("inches").Replace("80", "80.123456789", StringComparison.Ordinal));
        await using Visit visit = await site.PhoneAsync();
        IPage page = visit.Page;
        await page.Context.AddCookiesAsync([new() { Name = "display", Value = "in-comma", Url = site.Address.ToString() }]);
        await page.GotoAsync($"/machines/{id}");
        await Expect(page.Locator("#leg1-nearPath")).ToHaveValueAsync("3,1545");
        await Expect(page.Locator("#washers")).ToHaveValueAsync("0,0197; 0,0315; 0,0394; 0,063");
        await page.Locator("#leg1-farPath").FillAsync("1,125e1");
        await page.Locator("#washers").FillAsync("0,0197; 0,0315 x3");
        await page.Locator("#save").TapAsync();
        await Expect(page.GetByRole(AriaRole.Status)).ToHaveTextAsync("Kept.");
        JsonElement machine = await DocumentAsync(page);
        Assert.Equal("80.123456789", machine.GetProperty("legs")[0].GetProperty("nearPath").GetRawText());
        Assert.Equal(285.75, machine.GetProperty("legs")[0].GetProperty("farPath").GetDouble());
        Assert.Equal("0.5", machine.GetProperty("washers")[0].GetRawText());
        Assert.Equal(3, machine.GetProperty("washers")[1].GetProperty("count").GetInt32());
        visit.ShouldBeQuiet();
    }

    [Fact]
    public async Task A_file_that_goes_out_comes_in_again()
    {
        await using Visit visit = await site.DeskAsync();
        IPage page = visit.Page;
        long id = await AddAsync(Machines.Named("out & in").Replace("\"washers\"", "\"colour\": \"grey\", \"washers\"", StringComparison.Ordinal));
        await page.GotoAsync($"/machines/{id}");
        IDownload download = await page.RunAndWaitForDownloadAsync(() => page.GetByRole(AriaRole.Link, new() { Name = "Export as a file" }).ClickAsync());
        Assert.Equal("out---in.json", download.SuggestedFilename);
        string file = Path.Combine(site.Data, "machine.json");
        await download.SaveAsAsync(file);

        await page.GotoAsync("/machines");
        await page.Locator("#file").SetInputFilesAsync(file);
        await page.GetByRole(AriaRole.Button, new() { Name = "Read the file" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Alert).Filter(new() { HasText = "out & in has the same data" })).ToBeVisibleAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep both" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("out & in");
        Assert.DoesNotContain($"/machines/{id}?", page.Url, StringComparison.Ordinal);
        Assert.Equal(await site.Client.GetStringAsync($"/api/machines/{id}/file", TestContext.Current.CancellationToken), (await DocumentAsync(page)).GetRawText());

        await page.GotoAsync("/machines");
        await page.Locator("#file").SetInputFilesAsync(new FilePayload { Name = "big.json", MimeType = "application/json", Buffer = new byte[70_000] });
        await page.GetByRole(AriaRole.Button, new() { Name = "Read the file" }).ClickAsync();
        await Expect(page.Locator("#file-error")).ToContainTextAsync("more than 64 KB");
        visit.ShouldBeQuiet("409", "413");
    }

    [Fact]
    public async Task A_change_from_a_second_page_is_never_overwritten_silently()
    {
        long id = await AddAsync(Machines.Named("twice open"));
        await using Visit first = await site.PhoneAsync();
        await using Visit second = await site.DeskAsync();
        await first.Page.GotoAsync($"/machines/{id}");
        await second.Page.GotoAsync($"/machines/{id}");
        await second.Page.Locator("#bed-x").FillAsync("600");
        await second.Page.Locator("#save").ClickAsync();
        await Expect(second.Page.GetByRole(AriaRole.Status)).ToHaveTextAsync("Kept.");

        await first.Page.Locator("#bed-y").FillAsync("333");
        await first.Page.Locator("#save").TapAsync();
        await Expect(first.Page.GetByRole(AriaRole.Heading, new() { Name = "Not kept" })).ToBeVisibleAsync();
        await Expect(first.Page.Locator("#bed-y")).ToHaveValueAsync("333");
        await Expect(first.Page.Locator("#bed-x-now")).ToHaveTextAsync("Kept now: 600");
        Assert.Equal(400, (await DocumentAsync(second.Page)).GetProperty("bed").GetProperty("y").GetInt32());
        await first.Page.ShouldBeAccessibleAsync();
        await first.PictureAsync("machine-meanwhile");

        // Again without the box: nothing is overwritten. With it: what stands here is kept.
        await first.Page.Locator("#bed-y").PressAsync("Enter");
        await Expect(first.Page.Locator("#bed-x-now")).ToBeVisibleAsync();
        Assert.Equal(400, (await DocumentAsync(second.Page)).GetProperty("bed").GetProperty("y").GetInt32());
        await first.Page.Locator("#bed-x").FillAsync("600");
        await first.Page.GetByLabel("put what stands here").CheckAsync();
        await first.Page.Locator("#save").TapAsync();
        await Expect(first.Page.GetByRole(AriaRole.Status)).ToHaveTextAsync("Kept.");
        JsonElement bed = (await DocumentAsync(first.Page)).GetProperty("bed");
        Assert.Equal((600, 333), (bed.GetProperty("x").GetInt32(), bed.GetProperty("y").GetInt32()));

        await second.Page.GetByText("Delete this machine").ClickAsync();
        await second.Page.GetByRole(AriaRole.Button, new() { Name = "Yes, delete it" }).ClickAsync();
        await Expect(second.Page.GetByText("has changed meanwhile")).ToBeVisibleAsync();
        await second.Page.GetByText("Delete this machine").ClickAsync();
        await second.Page.GetByRole(AriaRole.Button, new() { Name = "Yes, delete it" }).ClickAsync();
        await Expect(second.Page).ToHaveURLAsync(new Regex("/machines$"));

        // Deleted under the first page: what it holds can still be kept.
        await first.Page.Locator("#name").FillAsync("once more");
        await first.Page.Locator("#save").TapAsync();
        await Expect(first.Page.GetByText("deleted meanwhile")).ToBeVisibleAsync();
        await first.Page.Locator("#save").TapAsync();
        await Expect(first.Page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("once more");
        first.ShouldBeQuiet("412", "404");
        second.ShouldBeQuiet("412");
    }

    [Fact]
    public async Task A_machine_can_be_made_by_keyboard_alone()
    {
        await using Visit visit = await site.DeskAsync();
        IPage page = visit.Page;
        await page.GotoAsync("/machines/new?preset=large-bed");
        List<string> reached = [];
        for (int step = 0; step < 140 && !reached.Contains("save"); step++)
        {
            await page.Keyboard.PressAsync("Tab");
            string name = await page.EvaluateAsync<string>("() => document.activeElement.id || document.activeElement.name || ''");
            reached.Add(name);
            Assert.True(await page.EvaluateAsync<bool>("() => document.activeElement.matches(':focus-visible')"), name);
            if (name is "name" or "leg2-arm")
            {
                await page.Keyboard.PressAsync("Control+a");
                await page.Keyboard.TypeAsync(name == "name" ? "typed" : "44");
            }
            if (name == "leg3")
                await page.Keyboard.PressAsync("Space");
            if (name is "leg3-nearPath" or "leg3-travel")
                await page.Keyboard.TypeAsync("70");
        }
        foreach (string name in (string[])["leg1-nearPath", "leg1-travel", "leg1-upperLeft", "leg1-thread", "bed", "bed-x", "aperture-diameter", "washers", "leg3-farPath", "save"])
            Assert.Contains(name, reached);
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("typed");
        JsonElement legs = (await DocumentAsync(page)).GetProperty("legs");
        Assert.Equal((44, 140), (legs[1].GetProperty("frame").GetProperty("arm").GetInt32(), legs[2].GetProperty("farPath").GetInt32()));
        visit.ShouldBeQuiet();
    }

    [Fact]
    public async Task Nothing_is_cut_off_every_control_is_large_enough_and_none_is_without_a_name_at_any_width()
    {
        long id = await AddAsync(Machines.Named(Usability.Long("bench_laser")));
        await using Visit visit = await site.PhoneAsync();
        IPage page = visit.Page;
        Task CheckAsync(string name) => page.AtEachWidthAsync(async width =>
        {
            await page.EmulateMediaAsync(new() { ColorScheme = width == 360 ? ColorScheme.Dark : ColorScheme.Light });
            await page.ShouldFitAsync();
            await page.ShouldBeAccessibleAsync();
            await visit.PictureAsync($"{name}-{width}");
        });
        await page.GotoAsync("/machines");
        await CheckAsync("machines");
        await page.GotoAsync($"/machines/{id}");
        await page.GetByLabel("Mirror three or the nozzle").CheckAsync();
        await page.EvaluateAsync("() => { for (const d of document.querySelectorAll('details')) d.open = true; for (const s of document.querySelectorAll('select')) if (s.querySelector('[value=own]')) s.value = 'own'; }");
        await CheckAsync("machine-open");
        JsonElement begun = await (await site.Client.SendAsync(HttpMethod.Post, "/api/visits", $$"""{ "machine": {{id}} }""")).JsonAsync();
        foreach (string address in new[] { $"/visits/{begun.GetProperty("id").GetInt64()}", "/visits", $"/machines/{id}/history", "/machines/new?preset=small-desktop" })
        {
            await page.GotoAsync(address);
            await page.ShouldFitAtEachWidthAsync();
            await visit.PictureAsync("machine-" + address.Split('/', '?')[1] + address.Length);
        }

        visit.ShouldBeQuiet();
    }

    private async Task<long> AddAsync(string document) =>
        (await (await site.Client.SendAsync(HttpMethod.Post, "/api/machines", document)).JsonAsync()).GetProperty("id").GetInt64();

    /// <summary>The document of the machine that the page shows.</summary>
    private async Task<JsonElement> DocumentAsync(IPage page)
    {
        string id = new Uri(page.Url).AbsolutePath.Split('/')[^1];
        return JsonDocument.Parse(await site.Client.GetStringAsync($"/api/machines/{id}/file", TestContext.Current.CancellationToken)).RootElement;
    }
}
