using MarkReader.Application.Records;
using MarkReader.Quantities;

namespace MarkReader.Service.Display;

/// <summary>How lengths are shown and typed: chosen once, kept in the browser.</summary>
/// <param name="Inches">Inches in place of millimetres.</param>
/// <param name="Comma">A decimal comma in place of the point.</param>
public sealed record Preferences(bool Inches, bool Comma)
{
    private const string Cookie = "display";

    private static readonly TimeSpan s_kept = TimeSpan.FromDays(400);

    /// <summary>Both in one word: mm-point, in-comma.</summary>
    internal string Name => (Inches ? "in-" : "mm-") + (Comma ? "comma" : "point");

    /// <summary>Numbers of documents as the pages show them, in UTC.</summary>
    internal RecordFormat Format => RecordFormat.Plain with { Unit = Inches ? RecordUnit.Inch : RecordUnit.Millimetre, HasComma = Comma };

    /// <summary>Numbers of a document as a request asks for them, else as the pages show them.</summary>
    /// <param name="unit">mm or in.</param>
    /// <param name="separator">point or comma.</param>
    internal Outcome<RecordFormat> FormatOf(string? unit, string? separator, TimeZoneInfo zone) =>
        RecordFormat.Read(unit ?? (Inches ? "in" : "mm"), separator ?? (Comma ? "comma" : "point"), zone);

    /// <summary>As the browser sends them; millimetres and a point when it sends none.</summary>
    internal static Preferences Read(HttpRequest request) => Named(request.Cookies[Cookie]);

    /// <summary>Those of a <see cref="Name"/>; millimetres and a point when there is none.</summary>
    internal static Preferences Named(string? name) => name is null
        ? new(false, false)
        : new(name.StartsWith("in", StringComparison.Ordinal), name.EndsWith("comma", StringComparison.Ordinal));

    internal void Write(HttpResponse response) => response.Cookies.Append(
        Cookie,
        Name,
        new() { MaxAge = s_kept, HttpOnly = true, SameSite = SameSiteMode.Strict, IsEssential = true });
}
