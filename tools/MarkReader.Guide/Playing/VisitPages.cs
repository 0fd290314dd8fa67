using MarkReader.Service.Guide;
using Microsoft.Playwright;

namespace MarkReader.Guide.Playing;

/// <summary>Shows the pages of a visit's chapters and reads them; found by what a person sees on them.</summary>
internal sealed class VisitPages(IPage page, ProgramWords words)
{
    /// <summary>Chapters about the photo of a pulse; what they show is not there without one.</summary>
    public static IReadOnlyList<string> OfPhotos { get; } = ["photo", "pick"];

    private static readonly string[] s_done = ["did.turn", "did.shim", "did.unshim", "did.move", "did.raise", "did.realign"];

    private ILocator Task => page.Locator("section").Filter(new() { Has = page.Locator("#now") });

    /// <summary>The page of a chapter, loaded anew so that all its pictures are there.</summary>
    /// <param name="address">The visit's page, with the photo to choose a mark from if there is one.</param>
    /// <param name="after">Number of the visit's events.</param>
    public async Task<Stop> ShowAsync(string name, string address, int after)
    {
        await page.GotoAsync(name == "record" ? $"/api{new Uri(new("http://visit"), address).AbsolutePath}/record.html" : address, new() { WaitUntil = WaitUntilState.Load });
        return name switch
        {
            // Its sentences tell of dates and photos; its heading says what it is.
            "record" => await HeadingAsync(page.Locator("body"), name, after),
            "undo" => await ReadAsync(Section(words["history"]), name, after, null),
            "photo" => await PartAsync(Task.GetByRole(AriaRole.Heading, new() { Name = words["photo.title"] }), name, after, words["practice.fire"]),
            "pick" => await PartAsync(Task.Locator("legend"), name, after, words["pick.use"]),
            _ => await TaskAsync(name, after),
        };
    }

    /// <summary>The part of a page under a heading.</summary>
    public ILocator Section(string heading) =>
        page.Locator("section").Filter(new() { Has = page.GetByRole(AriaRole.Heading, new() { Name = heading, Exact = true }) }).First;

    public ILocator Button(string name) => page.GetByRole(AriaRole.Button, new() { Name = name, Exact = true });

    /// <summary>The button that says that the work is done; null when no work is asked for.</summary>
    public async Task<string?> DoneButtonAsync()
    {
        foreach (string name in s_done.Select(key => words[key]))
        {
            if (await Button(name).IsVisibleAsync())
                return name;
        }

        return null;
    }

    public async Task<Stop> ReadAsync(ILocator panel, string name, int after, string? press) => new(await panel.ReadAsync(name, after, press, words["now.eyebrow"]), panel);

    private async Task<Stop> HeadingAsync(ILocator panel, string name, int after)
    {
        Stop stop = await ReadAsync(panel, name, after, null);
        return stop with { Chapter = stop.Chapter with { Says = [], Buttons = [] } };
    }

    // The reason is folded away; a picture of the cautions has no room for it.
    private async Task<Stop> TaskAsync(string name, int after)
    {
        ILocator why = Task.Locator("summary").Filter(new() { HasTextString = words["why"] }).First;
        if (name != "cautions" && await why.IsVisibleAsync())
            await why.ClickAsync();
        return await ReadAsync(Task, name, after, await DoneButtonAsync());
    }

    private async Task<Stop> PartAsync(ILocator title, string name, int after, string press)
    {
        GuideChapter chapter = await Task.ReadAsync(name, after, press, words["now.eyebrow"]);
        return new(chapter with { Heading = await title.InnerTextAsync(), Says = [] }, Task, title);
    }
}
