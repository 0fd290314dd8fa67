using System.Text.Json;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace MarkReader.Service.Tests.Support;

/// <summary>A practice visit on its page, operated as a person does: by what is written on it.</summary>
internal sealed class PracticePage(BrowserSite site, Visit visitor) : IAsyncDisposable
{
    private const int Patience = 60_000;

    public IPage Page => visitor.Page;

    public Visit Visitor => visitor;

    public string Address { get; private set; } = "";

    /// <summary>The visit as the interface for programs gives it.</summary>
    public async Task<JsonElement> VisitAsync() => await (await site.Client.GetAsync("/api" + Address, TestContext.Current.CancellationToken)).JsonAsync();

    public async Task BeginAsync(int seed, bool twist = false)
    {
        await Page.GotoAsync("/visits");
        await Page.FillAsync("#seed", seed.ToString(System.Globalization.CultureInfo.InvariantCulture));
        if (twist)
            await Page.GetByLabel("With a twisted frame").CheckAsync();
        await Page.GetByRole(AriaRole.Button, new() { Name = "Begin practice" }).ClickAsync();
        await Expect(Page.Locator("#now")).ToBeVisibleAsync();
        await Page.WaitForLoadStateAsync();
        Address = new Uri(Page.Url).AbsolutePath;
    }

    public async Task OpenAsync(string address)
    {
        Address = address;
        await Page.GotoAsync(address);
        await Expect(Page.Locator("#now")).ToBeVisibleAsync();
    }

    public async Task<string> NowAsync() => await Page.Locator("#now").InnerTextAsync();

    public async Task<int> VersionAsync() => int.Parse((await Page.Locator("[data-visit]").GetAttributeAsync("data-version"))!, System.Globalization.CultureInfo.InvariantCulture);

    /// <summary>Fires the pulse by the interface for programs and gives its photo to the page, as from the phone's album.</summary>
    public async Task UploadAsync()
    {
        byte[] photo = await site.Client.GetByteArrayAsync("/api" + Address + "/pulse", TestContext.Current.CancellationToken);
        await Page.SetInputFilesAsync("#photo", new FilePayload { Name = "IMG_0001.jpg", MimeType = "image/jpeg", Buffer = photo });
        await Expect(Page.GetByRole(AriaRole.Button, new() { Name = "Use this mark" })).ToBeVisibleAsync(new() { Timeout = Patience });
    }

    /// <summary>Does what the page asks for; false when it says that the visit is done.</summary>
    public async Task<bool> StepAsync()
    {
        int version = await VersionAsync();
        string now = await NowAsync();
        if (now == "Done")
            return false;
        Assert.NotEqual("Stop and check", now);
        if (now.StartsWith("Fire", StringComparison.Ordinal))
        {
            await UploadAsync();
            await PressAsync("Use this mark");
        }
        else
        {
            await Page.Locator(".task form .button.primary").ClickAsync();
        }

        await GoneOnAsync(version);
        return true;
    }

    public Task PressAsync(string button) => Page.GetByRole(AriaRole.Button, new() { Name = button, Exact = true }).ClickAsync();

    public Task GoneOnAsync(int version) =>
        Expect(Page.Locator("[data-visit]")).Not.ToHaveAttributeAsync("data-version", version.ToString(System.Globalization.CultureInfo.InvariantCulture), new() { Timeout = Patience });

    public async Task<int> ToTheEndAsync(int most = 80)
    {
        int steps = 0;
        while (await StepAsync())
            Assert.True(++steps <= most, "no end");
        return steps;
    }

    public ValueTask DisposeAsync() => visitor.DisposeAsync();
}
