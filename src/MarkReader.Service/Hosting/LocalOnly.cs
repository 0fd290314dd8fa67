using System.Net;
using MarkReader.Quantities;
using MarkReader.Service.Hosting.Phones;
using MarkReader.Service.Problems;
using MarkReader.Service.Texts;

namespace MarkReader.Service.Hosting;

/// <summary>Answers only requests that pages of this service make, or programs on this machine and, where asked for, on its network.</summary>
/// <remarks>
/// Another web site open in the same browser could otherwise send photos here, or, having pointed its own name at this machine,
/// read them. The name in the Host header stops the second; Sec-Fetch-Site and Origin, which a page cannot forge, stop the
/// first (WHATWG Fetch; W3C Fetch Metadata). So no token is needed in the forms. Over the network the Host must be the very
/// address that the connection came to, or this machine's name; that name is not taken over loopback, where no key is asked for
/// and somebody on the network could have answered for the name.
/// </remarks>
internal sealed class LocalOnly(PhoneGate phones)
{
    private static readonly string s_name = Dns.GetHostName();

    public Task Invoke(HttpContext context, RequestDelegate next)
    {
        Failure? refusal = CheckHost(context) ?? CheckOrigin(context.Request);
        return refusal is null ? next(context) : Problem.From(refusal).ExecuteAsync(context);
    }

    private Failure? CheckHost(HttpContext context)
    {
        string host = context.Request.Host.Host;
        bool own = host is "localhost" or "127.0.0.1" || (phones.Key is not null && IsReached(host, context.Connection));
        return own ? null : new(ServiceFailures.HostNotAllowed, ServiceTexts.Get("localOnly.thisAddressNotServedUnder"), ServiceTexts.Get("localOnly.openHttpWithServicePort"));
    }

    private static bool IsReached(string host, ConnectionInfo connection)
    {
        if (IPAddress.TryParse(host, out IPAddress? named))
            return connection.LocalIpAddress is { } reached && Peer.Plain(reached).Equals(Peer.Plain(named));
        return !Peer.IsLoopback(connection.RemoteIpAddress)
            && (host.Equals(s_name, StringComparison.OrdinalIgnoreCase) || host.Equals(s_name + ".local", StringComparison.OrdinalIgnoreCase));
    }

    private static Failure? CheckOrigin(HttpRequest request)
    {
        if (HttpMethods.IsGet(request.Method) || HttpMethods.IsHead(request.Method) || HttpMethods.IsOptions(request.Method))
            return null;
        string site = request.Headers["Sec-Fetch-Site"].ToString();
        string origin = request.Headers.Origin.ToString();
        bool foreign = site is not ("" or "same-origin" or "none")
            || (origin.Length > 0 && !string.Equals(origin, $"{request.Scheme}://{request.Host}", StringComparison.OrdinalIgnoreCase));
        return foreign
            ? new(ServiceFailures.OriginNotAllowed, ServiceTexts.Get("localOnly.anotherWebSiteAskedFor"), ServiceTexts.Get("localOnly.useServiceOwnPage"))
            : null;
    }
}
