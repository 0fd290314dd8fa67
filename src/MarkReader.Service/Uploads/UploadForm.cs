using MarkReader.Quantities;
using MarkReader.Service.Texts;
using Microsoft.AspNetCore.Http.Features;

namespace MarkReader.Service.Uploads;

/// <summary>A form that was sent: its texts and its files.</summary>
internal sealed class UploadForm
{
    /// <summary>The most that one request may hold, bytes.</summary>
    public const int RequestLimit = 40 * 1024 * 1024;

    private readonly IFormCollection _form;

    private UploadForm(IFormCollection form) => _form = form;

    /// <summary>The bounds on a form; larger parts go to a temporary file.</summary>
    public static void Limit(FormOptions options)
    {
        options.MultipartBodyLengthLimit = RequestLimit;
        options.ValueCountLimit = 64;
        options.ValueLengthLimit = 4096;
    }

    public static async Task<Outcome<UploadForm>> ReadAsync(HttpRequest request)
    {
        if (!request.HasFormContentType)
            return new Failure(ServiceFailures.MediaTypeNotTaken, ServiceTexts.Get("uploadForm.requestHoldsNoForm"), ServiceTexts.Get("uploadForm.sendMultipartFormData"));
        try
        {
            return new UploadForm(await request.ReadFormAsync(request.HttpContext.RequestAborted));
        }
        catch (BadHttpRequestException fault) when (fault.StatusCode == StatusCodes.Status413PayloadTooLarge)
        {
            return TooLarge();
        }
        catch (Exception fault) when (fault is InvalidDataException or BadHttpRequestException or IOException)
        {
            return new Failure(ServiceFailures.RequestUnreadable, ServiceTexts.Get("uploadForm.formCannotBeRead"), ServiceTexts.Get("uploadForm.sendAgainAsMultipartForm"));
        }
    }

    public static Failure TooLarge() => new(
        ServiceFailures.RequestTooLarge,
        ServiceTexts.Say("uploadForm.photosLargerThanMbTogether", RequestLimit / 1048576),
        ServiceTexts.Get("uploadForm.takeThemAtLowerResolution"));

    /// <summary>The first file of this name that was chosen.</summary>
    public IFormFile? File(string name) => Files(name) is [var first, ..] ? first : null;

    /// <summary>The files of this name that were chosen; a picker that was left alone sends an unnamed empty one.</summary>
    public IReadOnlyList<IFormFile> Files(string name) => [.. _form.Files.GetFiles(name).Where(file => file.FileName.Length > 0 || file.Length > 0)];

    /// <summary>The text of this name, or null when it is missing or blank.</summary>
    public string? Text(string name) => _form[name].FirstOrDefault(text => !string.IsNullOrWhiteSpace(text))?.Trim();

    /// <summary>All texts of this name.</summary>
    public IReadOnlyList<string> Texts(string name) => [.. _form[name].OfType<string>()];

    public static async Task<byte[]> BytesAsync(IFormFile file, CancellationToken cancellation)
    {
        byte[] bytes = new byte[file.Length];
        await using Stream stream = file.OpenReadStream();
        await stream.ReadExactlyAsync(bytes, cancellation);
        return bytes;
    }
}
