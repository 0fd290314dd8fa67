using MarkReader.Service.Tests.Support;
using Microsoft.Playwright;

[assembly: AssemblyFixture(typeof(SharedBrowser))]

namespace MarkReader.Service.Tests.Support;

/// <summary>One browser for all tests: Debian's Chromium, or the one that CHROMIUM names. Visitors share nothing in it, each has a context of its own.</summary>
public sealed class SharedBrowser : IAsyncLifetime
{
    private static readonly SemaphoreSlim s_start = new(1);
    private static IPlaywright? s_playwright;
    private static IBrowser? s_browser;

    /// <summary>Started by the first test that needs it.</summary>
    internal static async Task<IBrowser> StartAsync()
    {
        await s_start.WaitAsync(TestContext.Current.CancellationToken);
        try
        {
            // A busy machine is slow, not wrong.
            Assertions.SetDefaultExpectTimeout(60_000);
            s_playwright ??= await Playwright.CreateAsync();
            return s_browser ??= await s_playwright.Chromium.LaunchAsync(new()
            {
                ExecutablePath = Environment.GetEnvironmentVariable("CHROMIUM") ?? "/usr/bin/chromium",
                Headless = true,
                Args =
                [
                    "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
                    "--disable-component-update", "--disable-sync",
                ],
            });
        }
        finally
        {
            s_start.Release();
        }
    }

    public ValueTask InitializeAsync() => ValueTask.CompletedTask;

    public async ValueTask DisposeAsync()
    {
        if (s_browser is not null)
            await s_browser.DisposeAsync();
        s_playwright?.Dispose();
    }
}
