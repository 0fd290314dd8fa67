namespace MarkReader.Service.Display;

/// <summary>How lengths are shown and typed: chosen once, kept in the browser.</summary>
/// <param name="Inches">Inches in place of millimetres.</param>
/// <param name="Comma">A decimal comma in place of the point.</param>
public sealed record Preferences(bool Inches, bool Comma)
{
    private const string Cookie = "display";

    private static readonly TimeSpan s_kept = TimeSpan.FromDays(400);

    /// <summary>As the browser sends them; millimetres and a point when it sends none.</summary>
    internal static Preferences Read(HttpRequest request) => request.Cookies[Cookie] is { } text
        ? new(text.StartsWith("in", StringComparison.Ordinal), text.EndsWith("comma", StringComparison.Ordinal))
        : new(false, false);

    internal void Write(HttpResponse response) => response.Cookies.Append(
        Cookie,
        (Inches ? "in-" : "mm-") + (Comma ? "comma" : "point"),
        new() { MaxAge = s_kept, HttpOnly = true, SameSite = SameSiteMode.Strict, IsEssential = true });
}
