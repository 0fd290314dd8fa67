using MarkReader.Guide.Hosting;
using MarkReader.Guide.Pictures;
using MarkReader.Guide.Playing;
using MarkReader.Service.Guide;
using Microsoft.Playwright;

namespace MarkReader.Guide;

/// <summary>Makes the guide anew: plays a first visit on the running service and keeps what it says and shows.</summary>
internal static class MakeGuide
{
    /// <summary>A telephone, upright.</summary>
    public static BrowserNewContextOptions Phone(Uri service) => new()
    {
        BaseURL = service.ToString(),
        ViewportSize = new() { Width = 390, Height = 780 },
        DeviceScaleFactor = 1.5f,
        IsMobile = true,
        HasTouch = true,
        ColorScheme = ColorScheme.Light,
        ReducedMotion = ReducedMotion.Reduce,
        Locale = "en",
        TimezoneId = "UTC",
    };

    private static async Task<int> Main(string[] arguments)
    {
        if (arguments is not [var repository])
        {
            await Console.Error.WriteLineAsync("usage: tools/guide (its only argument, the repository's folder, is given by the script)");
            return 2;
        }

        try
        {
            await WriteAsync(repository);
            return 0;
        }
        catch (Exception fault) when (fault is PlaywrightException or TimeoutException or InvalidOperationException or KeyNotFoundException)
        {
            // Said here, not by the runtime: that would end without stopping the service.
            await Console.Error.WriteLineAsync($"error: GUIDE_NOT_MADE: {fault.Message}; change tools/MarkReader.Guide to what the pages are now");
            await Console.Error.WriteLineAsync(fault.StackTrace);
            return 1;
        }
    }

    private static async Task WriteAsync(string repository)
    {
        string folder = GuideBook.FolderIn(Path.Combine(repository, "src", "MarkReader.Service", "wwwroot"));
        Directory.CreateDirectory(folder);
        await using ServiceProcess service = await ServiceProcess.StartAsync(Path.Combine(AppContext.BaseDirectory, "MarkReader.Service.dll"));
        using IPlaywright playwright = await Playwright.CreateAsync();
        await using IBrowser browser = await playwright.Chromium.LaunchAsync(new()
        {
            ExecutablePath = Environment.GetEnvironmentVariable("CHROMIUM") ?? "/usr/bin/chromium",
            Args = ["--no-sandbox", "--disable-gpu", "--disable-lcd-text", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"],
        });
        IPage page = await (await browser.NewContextAsync(Phone(service.Address))).NewPageAsync();
        page.SetDefaultTimeout(15_000);
        FirstVisit visit = new(page, ProgramWords.Read(repository));
        List<GuideChapter> chapters = [];
        await foreach (Stop stop in visit.PlayAsync())
        {
            chapters.Add(await Camera.KeepAsync(page, stop, folder));
            Console.WriteLine($"{stop.Chapter.Name}: {stop.Chapter.Heading}");
        }

        foreach (string old in Directory.GetFiles(folder, "*.png").Where(file => chapters.All(c => c.Picture!.File != Path.GetFileName(file))))
            File.Delete(old);
        new GuideBook(FirstVisit.Machine, chapters, await visit.EventsAsync()).Write(folder);
    }
}
