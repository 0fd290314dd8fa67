using MarkReader.Quantities;
using MarkReader.Service.Texts;

namespace MarkReader.Service.Uploads;

/// <summary>The body of a request that sends JSON.</summary>
internal static class JsonBody
{
    /// <summary>Its bytes, at most <paramref name="most"/> of them; no more are read.</summary>
    public static async Task<Outcome<byte[]>> ReadAsync(HttpRequest request, int most)
    {
        if (!request.HasJsonContentType())
            return new Failure(ServiceFailures.MediaTypeNotTaken, ServiceTexts.Get("jsonBody.requestDoesNotSayThat"), ServiceTexts.Get("jsonBody.sendWithContentTypeApplication"));
        return await BytesAsync(request, most);
    }

    /// <summary>The same of any kind of body.</summary>
    internal static async Task<Outcome<byte[]>> BytesAsync(HttpRequest request, int most)
    {
        if (request.ContentLength > most)
            return TooLarge(most);
        try
        {
            byte[] bytes = new byte[most + 1];
            int length = await request.Body.ReadAtLeastAsync(bytes, bytes.Length, throwOnEndOfStream: false, request.HttpContext.RequestAborted);
            return length > most ? TooLarge(most) : bytes[..length];
        }
        catch (Exception fault) when (fault is BadHttpRequestException or IOException)
        {
            return new Failure(ServiceFailures.RequestUnreadable, ServiceTexts.Get("common.requestBodyCannotBeRead"), ServiceTexts.Get("common.sendAgain"));
        }
    }

    private static Failure TooLarge(int most) => new(ServiceFailures.RequestTooLarge, ServiceTexts.Word("jsonBody.requestBodyHasMoreThan", most), ServiceTexts.Get("jsonBody.sendLessAtOnce"));
}
