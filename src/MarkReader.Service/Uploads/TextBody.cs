using MarkReader.Quantities;
using MarkReader.Service.Texts;

namespace MarkReader.Service.Uploads;

/// <summary>The body of a request that sends a table as text/csv or text/plain.</summary>
internal static class TextBody
{
    /// <summary>Its bytes, at most <paramref name="most"/> of them; no more are read.</summary>
    public static async Task<Outcome<byte[]>> ReadAsync(HttpRequest request, int most)
    {
        string type = (request.ContentType ?? "").Split(';')[0].Trim();
        return type is "text/csv" or "text/plain"
            ? await JsonBody.BytesAsync(request, most)
            : new Failure(ServiceFailures.MediaTypeNotTaken, ServiceTexts.Get("textBody.requestDoesNotSayThat"), ServiceTexts.Get("textBody.sendWithContentType"));
    }
}
