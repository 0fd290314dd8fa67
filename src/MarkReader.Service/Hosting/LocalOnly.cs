using MarkReader.Quantities;
using MarkReader.Service.Problems;

namespace MarkReader.Service.Hosting;

/// <summary>Answers only requests that pages of this service, or programs on this machine, make.</summary>
/// <remarks>
/// Another web site open in the same browser could otherwise send photos here, or, having pointed its own name at 127.0.0.1,
/// read them. The name in the Host header stops the second; Sec-Fetch-Site and Origin, which a page cannot forge, stop the
/// first (WHATWG Fetch; W3C Fetch Metadata). So no token is needed in the forms.
/// </remarks>
internal static class LocalOnly
{
    public static Task Invoke(HttpContext context, RequestDelegate next)
    {
        Failure? refusal = CheckHost(context.Request) ?? CheckOrigin(context.Request);
        return refusal is null ? next(context) : Problem.From(refusal).ExecuteAsync(context);
    }

    private static Failure? CheckHost(HttpRequest request) => request.Host.Host is "localhost" or "127.0.0.1"
        ? null
        : new(ServiceFailures.HostNotAllowed, "this address is not served under that name", "open http://127.0.0.1 with the service's port");

    private static Failure? CheckOrigin(HttpRequest request)
    {
        if (HttpMethods.IsGet(request.Method) || HttpMethods.IsHead(request.Method) || HttpMethods.IsOptions(request.Method))
            return null;
        string site = request.Headers["Sec-Fetch-Site"].ToString();
        string origin = request.Headers.Origin.ToString();
        bool foreign = site is not ("" or "same-origin" or "none")
            || (origin.Length > 0 && !string.Equals(origin, $"{request.Scheme}://{request.Host}", StringComparison.OrdinalIgnoreCase));
        return foreign
            ? new(ServiceFailures.OriginNotAllowed, "another web site asked for this", "use the service's own page")
            : null;
    }
}
