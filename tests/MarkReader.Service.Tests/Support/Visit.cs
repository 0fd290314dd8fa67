using System.Globalization;
using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace MarkReader.Service.Tests.Support;

/// <summary>One visitor's page. What the browser complains of, and every request to elsewhere, is collected.</summary>
internal sealed class Visit : IAsyncDisposable
{
    private readonly IBrowserContext _context;
    private readonly List<string> _complaints = [];

    private Visit(IBrowserContext context, IPage page) => (_context, Page) = (context, page);

    public IPage Page { get; }

    public static async Task<Visit> StartAsync(BrowserSite site, BrowserNewContextOptions options)
    {
        options.BaseURL = site.Address.ToString();
        IBrowserContext context = await site.Browser.NewContextAsync(options);
        context.SetDefaultTimeout(60_000);
        await SlowPartsAsync(context);
        Visit visit = new(context, await context.NewPageAsync());
        visit.Watch(site.Address.GetLeftPart(UriPartial.Authority));
        return visit;
    }

    /// <summary>Checks that nothing was complained of, save for what holds one of the words given.</summary>
    public void ShouldBeQuiet(params string[] expected)
    {
        List<string> unexpected = [.. _complaints.Where(complaint => !expected.Any(word => complaint.Contains(word, StringComparison.Ordinal)))];
        Assert.Empty(unexpected);
    }

    /// <summary>Fills in a leg by its fields.</summary>
    public async Task FillAsync(string? near, string? far, string nearPath = "80", string farPath = "480")
    {
        if (near is not null)
            await Page.SetInputFilesAsync("#near", near);
        if (far is not null)
            await Page.SetInputFilesAsync("#far", far);
        await Page.FillAsync("#nearPath", nearPath);
        await Page.FillAsync("#farPath", farPath);
    }

    /// <summary>Keeps a picture of the page in the folder that MARKREADER_SCREENS names, for people to look at.</summary>
    public async Task PictureAsync(string name)
    {
        if (Environment.GetEnvironmentVariable("MARKREADER_SCREENS") is not { Length: > 0 } folder)
            return;
        await Page.WaitForLoadStateAsync();
        await Page.ScreenshotAsync(new() { Path = Path.Combine(folder, name + ".png"), FullPage = true });
    }

    public async ValueTask DisposeAsync() => await _context.DisposeAsync();

    /// <summary>Lets style sheets and scripts come late by the milliseconds in MARKREADER_SLOW_PARTS, to find what holds only while they are quick.</summary>
    private static async Task SlowPartsAsync(IBrowserContext context)
    {
        if (!int.TryParse(Environment.GetEnvironmentVariable("MARKREADER_SLOW_PARTS"), NumberStyles.None, CultureInfo.InvariantCulture, out int late))
            return;
        await context.RouteAsync(new Regex(@"\.(css|js)(\?|$)"), async route =>
        {
            await Task.Delay(late);
            await route.ContinueAsync();
        });
    }

    private void Watch(string own)
    {
        Page.Console += (_, message) =>
        {
            if (message.Type is "error" or "warning")
                _complaints.Add($"{message.Type}: {message.Text} ({message.Location})");
        };
        Page.PageError += (_, error) => _complaints.Add("fault: " + error);
        Page.Request += (_, request) =>
        {
            if (!request.Url.StartsWith(own + "/", StringComparison.Ordinal) && !request.Url.StartsWith("blob:" + own, StringComparison.Ordinal))
                _complaints.Add("elsewhere: " + request.Url);
        };
    }
}
