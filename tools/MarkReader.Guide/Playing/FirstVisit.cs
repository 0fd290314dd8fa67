using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using Microsoft.Playwright;

namespace MarkReader.Guide.Playing;

/// <summary>A visit to a practice machine, played on the pages as a person does it.</summary>
internal sealed class FirstVisit(IPage page, ProgramWords words)
{
    /// <summary>The practice machine: an ordinary one, both legs to be turned, no twist, to be centred.</summary>
    public const int Machine = 6;

    private const int MostSteps = 80;
    private const int Patience = 60_000;

    private readonly VisitPages _pages = new(page, words);
    private readonly HashSet<string> _told = [];
    private int _rounds;

    /// <summary>Where the visit's page is; empty before it has begun.</summary>
    public string Address { get; private set; } = "";

    /// <summary>Plays on to the next chapter each time one is asked for; the page then stands at it.</summary>
    /// <exception cref="InvalidOperationException">The visit comes to no end, or the program says stop.</exception>
    public async IAsyncEnumerable<Stop> PlayAsync()
    {
        await page.GotoAsync("/visits");
        await page.GetByLabel(words["list.seed"]).FillAsync(Machine.ToString(CultureInfo.InvariantCulture));
        yield return await _pages.ReadAsync(_pages.Section(words["list.practice"]), "practise", 0, words["list.practice.go"]);
        await _pages.Button(words["list.practice.go"]).ClickAsync();
        await page.Locator("#now").WaitForAsync();
        Address = new Uri(page.Url).AbsolutePath;

        bool worked = false;
        for (int step = 0; step < MostSteps; step++)
        {
            JsonElement visit = await VisitAsync();
            int after = visit.GetProperty("events").GetArrayLength();
            string kind = visit.GetProperty("advice").GetProperty("action").GetProperty("kind").GetString()!;
            bool work = kind is not ("fire" or "survey" or "done");
            _rounds += worked && !work ? 1 : 0;
            worked = work;
            foreach (string chapter in ChaptersAt(kind).Where(_told.Add))
                yield return await _pages.ShowAsync(chapter, Address, after);
            if (kind == "done")
                yield break;
            if (!work)
            {
                await FireAsync();
                if (_told.Add("pick"))
                    yield return await _pages.ShowAsync("pick", new Uri(page.Url).PathAndQuery, after);
                await PressAsync(words["pick.use"]);
            }
            else
            {
                await PressAsync(await _pages.DoneButtonAsync() ?? throw new InvalidOperationException($"The program asks for {kind} and has no button for it."));
            }
        }

        throw new InvalidOperationException($"The visit is not done after {MostSteps} steps.");
    }

    /// <summary>What was done so far, as visit files have it; the photos, which go with the data folder, are left out.</summary>
    public async Task<IReadOnlyList<JsonElement>> EventsAsync() => [.. (await VisitAsync()).GetProperty("events").EnumerateArray().Select(WithoutPhoto)];

    private IEnumerable<string> ChaptersAt(string kind) => kind switch
    {
        // Where the first turn brings the mark nobody knows before; a later one shows what was learned.
        "fire" when _rounds > 1 => ["check"],
        "fire" when _rounds == 1 => ["undo"],
        "fire" when _told.Contains("pick") => ["far"],
        "fire" => ["cautions", "photo"],
        "turn" => ["turn"],
        "survey" => ["corner"],
        "moveTarget" => ["centre"],
        "done" => ["done", "record"],
        _ => [],
    };

    private async Task<JsonElement> VisitAsync()
    {
        IAPIResponse answer = await page.APIRequest.GetAsync("/api" + Address);
        return (await answer.JsonAsync())!.Value;
    }

    private async Task FireAsync()
    {
        await _pages.Button(words["practice.fire"]).ClickAsync();
        await _pages.Button(words["pick.use"]).WaitForAsync(new() { Timeout = Patience });
    }

    // The page goes on by itself when the visit has.
    private async Task PressAsync(string button)
    {
        string version = (await page.Locator("[data-version]").GetAttributeAsync("data-version"))!;
        await _pages.Button(button).ClickAsync();
        await page.Locator($"[data-version]:not([data-version='{version}'])").WaitForAsync(new() { Timeout = Patience });
    }

    private static JsonElement WithoutPhoto(JsonElement kept)
    {
        JsonObject e = JsonObject.Create(kept.GetProperty("event"))!;
        e.Remove("photo");
        e.Remove("mark");
        return JsonSerializer.SerializeToElement(e);
    }
}
