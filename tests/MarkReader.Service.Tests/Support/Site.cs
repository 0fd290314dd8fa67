using System.Net;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.AspNetCore.Server.Kestrel.Core;

namespace MarkReader.Service.Tests.Support;

/// <summary>The service as it is, on a free port of this machine, with a data folder of its own.</summary>
public class Site : WebApplicationFactory<Program>
{
    private readonly bool _keepsFolder;

    public Site()
        : this(null)
    {
    }

    /// <param name="data">A folder that an earlier site has used; null for a new one, which goes with the site.</param>
    internal Site(string? data)
    {
        _keepsFolder = data is not null;
        Data = data ?? Path.Combine(Path.GetTempPath(), "markreader-site-" + Guid.NewGuid().ToString("N"));
        UseKestrel((KestrelServerOptions kestrel) => kestrel.Listen(IPAddress.Loopback, 0));
        StartServer();
        Client = new() { BaseAddress = ClientOptions.BaseAddress };
    }

    public string Data { get; }

    /// <summary>A plain client over a real connection.</summary>
    public HttpClient Client { get; }

    public Uri Address => ClientOptions.BaseAddress;

    protected override void ConfigureWebHost(Microsoft.AspNetCore.Hosting.IWebHostBuilder builder)
    {
        ArgumentNullException.ThrowIfNull(builder);
        builder.UseSetting("data", Data);
        builder.UseSetting("port", "0");
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
