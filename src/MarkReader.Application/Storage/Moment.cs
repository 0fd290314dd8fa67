using System.Globalization;

namespace MarkReader.Application.Storage;

/// <summary>Times as the database keeps them: UTC, ISO 8601, to the millisecond, so that text order is time order.</summary>
internal static class Moment
{
    private const string Format = "yyyy-MM-dd'T'HH:mm:ss.fff'Z'";

    public static string ToText(DateTimeOffset time) => time.UtcDateTime.ToString(Format, CultureInfo.InvariantCulture);

    public static DateTimeOffset Parse(string text) =>
        DateTimeOffset.ParseExact(text, Format, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal);

    public static bool TryParse(string text, out DateTimeOffset time) =>
        DateTimeOffset.TryParseExact(text, Format, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out time);
}
