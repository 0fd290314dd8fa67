using System.Text.RegularExpressions;
using MarkReader.Service.Tests.Support;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace MarkReader.Service.Tests.Pages;

/// <summary>The studies' pages in a browser: from the plan to the result on paper.</summary>
public sealed class StudyPagesTests(BrowserSite site) : IClassFixture<BrowserSite>
{
    private const int Patience = 60_000;

    private static readonly string s_name = Usability.Long("tape_of_leg_1"), s_phone = Usability.Long("phone_2", 30);

    [Fact]
    public async Task Two_people_photograph_a_target_and_get_the_study_on_paper()
    {
        await using Visit visit = await site.PhoneAsync();
        IPage page = visit.Page;
        await page.GotoAsync("/");
        await page.GetByRole(AriaRole.Contentinfo).GetByRole(AriaRole.Link, new() { Name = "Studies" }).TapAsync();
        await Expect(page.Locator("section[aria-labelledby=marks]")).ToContainTextAsync("For a 95 % interval of the gauge with a half-width of 50 % of it");
        // What the fields begin with is told beside what is recommended.
        await Expect(page.Locator("section[aria-labelledby=marks]")).ToContainTextAsync($"{(await page.InputValueAsync("#marks-people")).Split('\n').Length} people, {await page.InputValueAsync("#marks-count")} photos each, give");
        await Expect(page.Locator("section[aria-labelledby=pulses]")).ToContainTextAsync($"{await page.InputValueAsync("#pulses-count")} pulses give");
        await page.FillAsync("#marks-name", s_name);
        await page.FillAsync("#marks-people", "Anna");
        await page.FillAsync("#marks-count", "2");
        await page.FillAsync("#marks-length", "0,5");
        await page.GetByRole(AriaRole.Button, new() { Name = "Begin this study", Exact = true }).TapAsync();
        await Expect(page.Locator("#marks-people-error")).ToContainTextAsync("The number of people or phones is 1");
        await Expect(page.Locator("#marks-length")).ToHaveValueAsync("0,5");
        await page.GetByText("Other numbers of people").TapAsync();
        await CheckAsync(visit, "studies");
        await page.FillAsync("#marks-people", $"Anna\n{s_phone}");
        await page.GetByRole(AriaRole.Button, new() { Name = "Begin this study", Exact = true }).TapAsync();

        await Expect(page.Locator("#next")).ToHaveTextAsync("Next: Anna, photos still missing: 2");
        await Expect(page.Locator("#result")).ToContainTextAsync("No photo is there yet. A first result is shown as soon as everyone has equally many photos");
        await CheckAsync(visit, "study-begun");
        await ChooseAsync(page, 0, StudyPhotos.Pulses[0]);
        await Expect(page.Locator("#photos-status")).ToHaveTextAsync("Photo 1 is not used.", new() { Timeout = Patience });
        await Expect(page.Locator("#study-photos")).ToContainTextAsync("The photo shows one mark only");
        await ChooseAsync(page, 0, StudyPhotos.Targets[0], StudyPhotos.Targets[1]);
        await Expect(page.Locator("#photos-status")).ToHaveTextAsync("Done: photo 3 is used.", new() { Timeout = Patience });
        await Expect(page.Locator("#next")).ToHaveTextAsync($"Next: {s_phone}, photos still missing: 2");
        await ChooseAsync(page, 0, StudyPhotos.Targets[1]);
        await Expect(page.Locator("#photos-error")).ToContainTextAsync("0.jpg: This photo is there already; it counts once.", new() { Timeout = Patience });
        // One of another target is named at once, while the right one is at hand.
        await ChooseAsync(page, 1, StudyPhotos.Other, StudyPhotos.Targets[2]);
        await Expect(page.Locator("#next")).ToHaveTextAsync("All that the plan asks for is there.", new() { Timeout = Patience });
        await Expect(page.Locator("#result")).ToContainTextAsync($"Photo 4 ('0.jpg' of {s_phone}) shows other marks than 3 photos that agree with each other. Put another photo of the same target, its card unmoved, in its place.");
        await Expect(page.Locator("#study-photos li").First).ToContainTextAsync("Used: 3 marks");
        await Expect(page.Locator("#study-photos li").Nth(1)).ToContainTextAsync(new Regex("Photo 4.*Shows other marks.", RegexOptions.Singleline));
        await Expect(page.Locator("#study-photos li").Nth(1).Locator(".good")).ToHaveCountAsync(0);
        await CheckAsync(visit, "study-other-target");
        await page.GetByRole(AriaRole.Button, new() { NameRegex = new("Remove.*Photo 4") }).TapAsync();
        await ChooseAsync(page, 1, StudyPhotos.Targets[3]);
        await Expect(page.Locator("#next")).ToHaveTextAsync("All that the plan asks for is there.", new() { Timeout = Patience });

        await Expect(page.Locator("#result")).ToContainTextAsync(new Regex("of the full tolerance width of 1 mm"));
        await Expect(page.Locator("#result img")).ToHaveCountAsync(3);
        await page.EvaluateAsync("() => { for (const d of document.querySelectorAll('details')) d.open = true; }");
        await CheckAsync(visit, "study");
        await ShouldBeADocumentAsync(visit, "study");

        // The reader's unit and sign go through all of it.
        await visit.Page.Context.AddCookiesAsync([new() { Name = "display", Value = "in-comma", Url = site.Address.ToString() }]);
        await page.ReloadAsync();
        await Expect(page.Locator("#result")).ToContainTextAsync(new Regex(@"standard deviation of 0,\d{6} in .* full tolerance width of 0,0394 in"));
        Assert.DoesNotMatch(@"\d\.\d| mm\b", await page.Locator("#result").InnerTextAsync());
        await ShouldBeADocumentAsync(visit, "study-inch");
        await page.ShouldKeepToInchesAndCommasAsync(site);
        await page.GotoAsync("/studies");
        await page.ShouldFitAtEachWidthAsync();
        await page.ShouldKeepToInchesAndCommasAsync(site);
        visit.ShouldBeQuiet("422", "400");
    }

    [Fact]
    public async Task Repeated_pulses_give_a_scatter_that_goes_into_a_machine()
    {
        using HttpResponseMessage kept = await site.Client.SendAsync(HttpMethod.Post, "/api/machines", Machines.Named("bench press"));
        await using Visit visit = await site.PhoneAsync();
        IPage page = visit.Page;
        await page.GotoAsync(kept.Headers.Location!.ToString()["/api".Length..]);
        await page.GetByText("Reminder, scatter of pulses").TapAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Find it with repeated pulses" }).TapAsync();
        await page.FillAsync("#pulses-name", "bench press, far station");
        await page.FillAsync("#pulses-count", "6");
        await page.FillAsync("#pulses-length", "480");
        await page.GetByRole(AriaRole.Button, new() { Name = "Begin this study of pulses" }).TapAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Before every pulse" })).ToBeVisibleAsync();

        await ChooseAsync(page, 0, [.. StudyPhotos.Pulses]);
        await Expect(page.Locator("#next")).ToHaveTextAsync("All that the plan asks for is there.", new() { Timeout = Patience });
        await Expect(page.Locator("#result")).ToContainTextAsync("6 pulses: a mark scatters by 0.");
        await Expect(page.Locator("#result")).ToContainTextAsync("Angular stability");
        await page.EvaluateAsync("() => { for (const d of document.querySelectorAll('details')) d.open = true; }");
        await CheckAsync(visit, "pulses");
        await ShouldBeADocumentAsync(visit, "pulses");

        await page.ShouldKeepToInchesAndCommasAsync(site);

        await page.SelectOptionAsync("#machine", new SelectOptionValue { Label = "bench press" });
        await page.GetByRole(AriaRole.Button, new() { Name = "Choose this machine" }).TapAsync();
        await Expect(page.Locator("#use")).ToContainTextAsync(new Regex("bench press reckons with 0.050.mm now. From now on: 0.[0-9]{3}.mm"));
        await CheckAsync(visit, "pulses-use");
        await page.GetByRole(AriaRole.Button, new() { Name = "Yes, enter it" }).TapAsync();
        await Expect(page.Locator(".intro [role=status]")).ToContainTextAsync("Entered: bench press");
        string file = await site.Client.GetStringAsync(kept.Headers.Location + "/file", TestContext.Current.CancellationToken);
        Assert.Matches("\"pulseScatter\": 0\\.[0-9]+", file);
        visit.ShouldBeQuiet();
    }

    [Fact]
    public async Task Without_scripts_photos_and_a_table_are_sent_the_plan_is_changed_and_a_study_is_deleted()
    {
        await using Visit visit = await site.PhoneAsync(scripts: false);
        IPage page = visit.Page;
        await page.GotoAsync("/studies");
        await page.FillAsync("#marks-name", "no scripts");
        await page.Locator("section[aria-labelledby=marks]").GetByText("Print and tape").TapAsync();
        foreach ((string typed, string refusal) in new[] { ("high", "not a number"), ("99", "is not between") })
            await RefusedAsync(page, typed, refusal);
        await page.FillAsync("#marks-tapeHeight", "0,025");
        await page.GetByRole(AriaRole.Button, new() { Name = "Begin this study", Exact = true }).TapAsync();
        await Expect(page.Locator("#next")).ToHaveTextAsync("Next: person 1, photos still missing: 3");
        await ChooseAsync(page, 0, StudyPhotos.Targets[0], StudyPhotos.Targets[1]);
        await page.GetByRole(AriaRole.Button, new() { Name = "Send the photos person 1" }).TapAsync();
        await Expect(page.Locator("#next")).ToHaveTextAsync("Next: person 1, photos still missing: 1", new() { Timeout = Patience });
        await ChooseAsync(page, 0, StudyPhotos.Targets[1]);
        await page.GetByRole(AriaRole.Button, new() { Name = "Send the photos person 1" }).TapAsync();
        await Expect(page.Locator("#photos-error")).ToContainTextAsync("'0.jpg' was not taken: the same photo is there already, as photo 2");
        await Expect(page.Locator(".held")).ToHaveCountAsync(0);
        await page.GetByText("Change the plan").TapAsync();
        await page.FillAsync("#marks-people", "somebody\nelse");
        await page.GetByRole(AriaRole.Button, new() { Name = "Save the plan" }).TapAsync();
        await Expect(page.Locator("#marks-form-error")).ToContainTextAsync("There are photos of 'person 1'");
        await page.FillAsync("#marks-people", "person 1\nelse");
        await page.GetByRole(AriaRole.Button, new() { Name = "Save the plan" }).TapAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 3, Name = "else" })).ToBeVisibleAsync();

        // Refused photos need not be chosen again: not after the plan was changed, and not after another photo has gone.
        await ChooseAsync(page, 0, StudyPhotos.Targets[2], "no photo"u8.ToArray(), StudyPhotos.Targets[3]);
        await page.GetByRole(AriaRole.Button, new() { Name = "Send the photos person 1" }).TapAsync();
        await Expect(page.Locator("#photos-error")).ToContainTextAsync("2 of 3 photos were not taken; '1.jpg': ", new() { Timeout = Patience });
        await Expect(page.Locator(".held")).ToContainTextAsync(new Regex("1 photo is still here\\s*2.jpg"));
        await visit.PictureAsync("study-held");
        // In inches the height is shown rounded; left alone it stays what it is.
        await page.Context.AddCookiesAsync([new() { Name = "display", Value = "in-point", Url = site.Address.ToString() }]);
        await page.GotoAsync(new Uri(page.Url).AbsolutePath);
        await page.GetByText("Change the plan").TapAsync();
        await Expect(page.Locator("#marks-tapeHeight")).ToHaveValueAsync("0.001");
        await page.FillAsync("#marks-count", "4");
        await page.GetByRole(AriaRole.Button, new() { Name = "Save the plan" }).TapAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Send the photos person 1" }).TapAsync();
        await Expect(page.Locator("#next")).ToContainTextAsync("Next: else", new() { Timeout = Patience });
        await Expect(page.Locator(".held")).ToHaveCountAsync(0);
        await ChooseAsync(page, 1, StudyPhotos.Targets[3]);
        await page.GetByRole(AriaRole.Button, new() { Name = "Send the photos else" }).TapAsync();
        await Expect(page.Locator("#photos-error")).ToContainTextAsync("'0.jpg' was not taken: the same photo is there already, as photo 4 of person 1");
        await page.GetByRole(AriaRole.Button, new() { NameRegex = new("Remove.*Photo 4") }).TapAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Send the photos else" }).TapAsync();
        await Expect(page.Locator("#study-photos")).ToContainTextAsync("Photo 4, else", new() { Timeout = Patience });
        foreach (int number in (int[])[1, 2, 3, 4])
            await page.GetByRole(AriaRole.Button, new() { NameRegex = new($"Remove.*Photo {number}") }).TapAsync();

        await page.GetByText("Readings from a table instead").TapAsync();
        await page.FillAsync("#table-text", "part,operator,repeat,u,v\n1,a,1,0.1,x\n");
        await page.GetByRole(AriaRole.Button, new() { Name = "Use the table" }).TapAsync();
        await Expect(page.Locator("#table-error")).ToContainTextAsync("not a number");
        await Expect(page.Locator("#table-text")).ToHaveValueAsync(new Regex("^part,operator"));
        List<string> rows = ["part;operator;repeat;u;v"];
        for (int i = 0; i < 12; i++)
            rows.Add($"{i % 3};{(i < 6 ? "Person 1" : "ELSE")};{i / 3 % 2};{i % 3},{i};{i % 3},{(7 * i) % 10}");
        await page.FillAsync("#table-text", string.Join('\n', rows).Replace("ELSE", "nobody", StringComparison.Ordinal));
        await page.GetByRole(AriaRole.Button, new() { Name = "Use the table" }).TapAsync();
        await Expect(page.Locator("#table-error")).ToContainTextAsync("The table names 'nobody', who is not in the plan");
        await page.FillAsync("#table-text", string.Join('\n', rows));
        await page.GetByRole(AriaRole.Button, new() { Name = "Use the table" }).TapAsync();
        await Expect(page.Locator("#result")).ToContainTextAsync("Too coarse for the tolerance");
        await Expect(page.Locator("section[aria-labelledby=step-plan]")).ToContainTextAsync("A table stands in place of the plan: 2 people or phones, 3 marks, 2 readings");
        await page.GetByRole(AriaRole.Button, new() { Name = "Remove the table" }).TapAsync();
        await Expect(page.Locator("#next")).ToContainTextAsync("Next: person 1");
        await page.GetByText("Delete this study").TapAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Yes, delete it" }).TapAsync();
        await Expect(page).ToHaveURLAsync(new Regex("/studies$"));
        await Expect(page.GetByRole(AriaRole.Link, new() { NameRegex = new("no scripts") })).ToHaveCountAsync(0);
        visit.ShouldBeQuiet("409", "400", "415");
    }

    private static async Task RefusedAsync(IPage page, string height, string refusal)
    {
        await page.FillAsync("#marks-tapeHeight", height);
        await page.GetByRole(AriaRole.Button, new() { Name = "Begin this study", Exact = true }).TapAsync();
        await Expect(page.Locator("#marks-tapeHeight-error")).ToContainTextAsync(refusal);
        await Expect(page.Locator("#marks-tapeHeight")).ToHaveValueAsync(height);
        await Expect(page.Locator("#marks-name")).ToHaveValueAsync("no scripts");
    }

    private static Task ChooseAsync(IPage page, int person, params byte[][] photos) =>
        page.SetInputFilesAsync($"#photos-{person}", photos.Select((p, i) => new FilePayload { Name = $"{i}.jpg", MimeType = "image/jpeg", Buffer = p }));

    private async Task ShouldBeADocumentAsync(Visit visit, string name)
    {
        string address = (await visit.Page.GetByRole(AriaRole.Link, new() { Name = "PDF, A4" }).GetAttributeAsync("href"))!;
        IAPIResponse answer = await visit.Page.APIRequest.GetAsync(new Uri(site.Address, address).ToString());
        byte[] pdf = await answer.BodyAsync();
        Assert.Equal("%PDF"u8, pdf.AsSpan(0, 4));
        if (Environment.GetEnvironmentVariable("MARKREADER_SCREENS") is { Length: > 0 } folder)
            await File.WriteAllBytesAsync(Path.Combine(folder, name + ".pdf"), pdf, TestContext.Current.CancellationToken);
    }

    private static Task CheckAsync(Visit visit, string name) => visit.Page.AtEachWidthAsync(async width =>
    {
        await visit.Page.EmulateMediaAsync(new() { ColorScheme = width == 360 ? ColorScheme.Dark : ColorScheme.Light });
        await visit.Page.ShouldFitAsync();
        await visit.Page.ShouldBeAccessibleAsync();
        await visit.PictureAsync($"{name}-{width}");
    });
}
