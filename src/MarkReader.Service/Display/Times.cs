using System.Globalization;
using System.Text.Encodings.Web;
using Microsoft.AspNetCore.Html;
using Microsoft.AspNetCore.Mvc.Rendering;

namespace MarkReader.Service.Display;

/// <summary>Times on pages: in UTC, which is named, and in the reader's own time where scripts run (times.js).</summary>
internal static class Times
{
    public static IHtmlContent Moment(DateTimeOffset at) => Tag(at, "moment", "yyyy-MM-dd HH:mm 'UTC'");

    /// <summary>Hours and minutes alone.</summary>
    public static IHtmlContent Clock(DateTimeOffset at) => Tag(at, "clock", "HH:mm 'UTC'");

    public static IHtmlContent Day(DateTimeOffset at) => Tag(at, "day", "yyyy-MM-dd 'UTC'");

    /// <summary>A text with its parts, of which some are times.</summary>
    /// <param name="text">With {0}, {1} for the parts.</param>
    public static IHtmlContent Say(string text, params object[] parts) =>
        new HtmlContentBuilder().AppendFormat(CultureInfo.InvariantCulture, HtmlEncoder.Default.Encode(text), parts);

    private static TagBuilder Tag(DateTimeOffset at, string kind, string format)
    {
        TagBuilder time = new("time");
        time.Attributes["datetime"] = Utc(at, "yyyy-MM-dd'T'HH:mm:ss'Z'");
        time.Attributes["data-local"] = kind;
        time.InnerHtml.Append(Utc(at, format));
        return time;
    }

    private static string Utc(DateTimeOffset at, string format) => at.UtcDateTime.ToString(format, CultureInfo.InvariantCulture);
}
