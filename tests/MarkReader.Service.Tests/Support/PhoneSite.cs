using MarkReader.Service.Hosting.Phones;

namespace MarkReader.Service.Tests.Support;

/// <summary>The service started for phones, and phones that reach it over this machine's own network address.</summary>
public sealed class PhoneSite : Site
{
    public PhoneSite()
        : base(null, phones: true)
    {
    }

    internal PhoneSite(string data)
        : base(data, phones: true)
    {
    }

    internal string Key => File.ReadAllText(Path.Combine(Data, "phone-key")).TrimEnd();

    /// <summary>The address for phones; the test is skipped on a machine without any.</summary>
    internal static Uri AddressOf(Site site)
    {
        IReadOnlyList<string> addresses = OwnAddresses.Now(site.Address.Port);
        Assert.SkipWhen(addresses.Count == 0, "this machine has no address on a network, only loopback");
        return new(addresses[0]);
    }

    /// <summary>A phone that has not joined: it keeps cookies and does not follow redirects.</summary>
    internal HttpClient Phone() => new(new SocketsHttpHandler { AllowAutoRedirect = false, UseProxy = false }) { BaseAddress = AddressOf(this) };

    internal Task<HttpResponseMessage> JoinAsync(HttpClient phone, string? key = null) =>
        phone.GetAsync(new Uri($"/join?key={key ?? Key}", UriKind.Relative), TestContext.Current.CancellationToken);
}
