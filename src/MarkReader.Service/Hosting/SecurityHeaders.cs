namespace MarkReader.Service.Hosting;

/// <summary>What a browser may do with the answers: nothing from elsewhere, no script or style in the page's text, no frames.</summary>
internal static class SecurityHeaders
{
    private const string Policy =
        "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' blob:; font-src 'self'; connect-src 'self'; "
        + "manifest-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'";

    public static Task Invoke(HttpContext context, RequestDelegate next)
    {
        // At the last moment: the answer to a fault starts again with no headers.
        context.Response.OnStarting(() =>
        {
            Write(context.Response.Headers, context.Items[typeof(SecurityHeaders)] as string ?? Policy);
            return Task.CompletedTask;
        });
        return next(context);
    }

    /// <summary>Gives an answer a policy of its own: a file that is made to stand alone has its style in it.</summary>
    public static void Use(HttpContext context, string policy) => context.Items[typeof(SecurityHeaders)] = policy;

    private static void Write(IHeaderDictionary headers, string policy)
    {
        headers.ContentSecurityPolicy = policy;
        headers.XContentTypeOptions = "nosniff";
        headers.XFrameOptions = "DENY";
        headers["Referrer-Policy"] = "same-origin";
        headers["Cross-Origin-Opener-Policy"] = "same-origin";
        headers["Cross-Origin-Resource-Policy"] = "same-origin";
        headers["Permissions-Policy"] = "camera=(self), geolocation=(), microphone=()";
        // Results change and can be deleted; on this machine nothing is gained by keeping copies.
        if (headers.CacheControl != "no-store")
            headers.CacheControl = "no-cache";
    }
}
