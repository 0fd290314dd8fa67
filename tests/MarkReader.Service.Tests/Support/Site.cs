using System.Net;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.AspNetCore.Server.Kestrel.Core;

namespace MarkReader.Service.Tests.Support;

/// <summary>The service as it is, on a free port of this machine, with a data folder of its own.</summary>
public class Site : WebApplicationFactory<Program>
{
    private readonly bool _keepsFolder;
    private readonly bool _phones;

    public Site()
        : this(null)
    {
    }

    /// <param name="data">A folder that an earlier site has used; null for a new one, which goes with the site.</param>
    /// <param name="phones">Whether it is started with --phones; it then listens on every address of this machine.</param>
    internal Site(string? data, bool phones = false)
    {
        _phones = phones;
        _keepsFolder = data is not null;
        Data = data ?? Path.Combine(Path.GetTempPath(), "markreader-site-" + Guid.NewGuid().ToString("N"));
        UseKestrel((KestrelServerOptions kestrel) =>
        {
            if (phones)
                kestrel.ListenAnyIP(0);
            else
                kestrel.Listen(IPAddress.Loopback, 0);
        });
        StartServer();
        Address = new UriBuilder(ClientOptions.BaseAddress) { Host = "127.0.0.1" }.Uri;
        Client = new() { BaseAddress = Address };
    }

    public string Data { get; }

    /// <summary>A plain client over a real connection.</summary>
    public HttpClient Client { get; }

    public Uri Address { get; }

    protected override void ConfigureWebHost(Microsoft.AspNetCore.Hosting.IWebHostBuilder builder)
    {
        ArgumentNullException.ThrowIfNull(builder);
        builder.UseSetting("data", Data);
        builder.UseSetting("port", "0");
        if (_phones)
            builder.UseSetting("phones", "true");
    }

    protected override void Dispose(bool disposing)
    {
        base.Dispose(disposing);
        if (!disposing)
            return;
        Client.Dispose();
        if (!_keepsFolder && Directory.Exists(Data))
            Directory.Delete(Data, recursive: true);
    }
}
