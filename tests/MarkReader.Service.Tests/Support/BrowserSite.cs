using Microsoft.Playwright;

namespace MarkReader.Service.Tests.Support;

/// <summary>The service with the browser beside it.</summary>
public sealed class BrowserSite : Site, IAsyncLifetime
{
    public BrowserSite()
        : this(false)
    {
    }

    internal BrowserSite(bool phones)
        : base(null, phones)
    {
    }

    internal IBrowser Browser { get; private set; } = null!;

    public async ValueTask InitializeAsync() => Browser = await SharedBrowser.StartAsync();

    /// <summary>A page of a telephone, operated by touch.</summary>
    internal Task<Visit> PhoneAsync(int width = 360, bool scripts = true, bool dark = false) => Visit.StartAsync(this, new()
    {
        ViewportSize = new() { Width = width, Height = 780 },
        DeviceScaleFactor = 2,
        IsMobile = true,
        HasTouch = true,
        JavaScriptEnabled = scripts,
        ColorScheme = dark ? ColorScheme.Dark : ColorScheme.Light,
    });

    /// <summary>A page of a desk machine, operated by mouse and keyboard.</summary>
    internal Task<Visit> DeskAsync(int width = 1280, bool dark = false) => Visit.StartAsync(this, new()
    {
        ViewportSize = new() { Width = width, Height = 900 },
        ColorScheme = dark ? ColorScheme.Dark : ColorScheme.Light,
    });
}
