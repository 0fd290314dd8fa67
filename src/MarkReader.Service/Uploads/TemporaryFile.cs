using MarkReader.Application.Storage;
using MarkReader.Application.VisitLog.Bundles;
using MarkReader.Quantities;
using MarkReader.Service.Texts;

namespace MarkReader.Service.Uploads;

/// <summary>A file beside the data that goes when it is closed: whole visits are too large for the memory.</summary>
internal static class TemporaryFile
{
    private const int Part = 81920;

    /// <remarks>Where what a killed program leaves half written is cleared away.</remarks>
    /// <exception cref="IOException">The data folder does not take it.</exception>
    public static FileStream Create(DataFolder folder) => new(
        Path.Combine(folder.Photos, $"visit-{Guid.NewGuid():N}.part"), FileMode.CreateNew, FileAccess.ReadWrite, FileShare.None, Part, FileOptions.DeleteOnClose | FileOptions.Asynchronous);

    /// <summary>Fills it with the request's body and goes back to its beginning. Null, or why not.</summary>
    public static async Task<Failure?> FillAsync(FileStream file, HttpRequest request, string mediaType)
    {
        if (request.ContentType?.StartsWith(mediaType, StringComparison.OrdinalIgnoreCase) != true)
            return new(ServiceFailures.MediaTypeNotTaken, ServiceTexts.Get("temporaryFile.requestDoesNotSayThat"), ServiceTexts.Word("temporaryFile.sendWithContentType", mediaType));
        try
        {
            byte[] part = new byte[Part];
            for (int count; (count = await request.Body.ReadAsync(part, request.HttpContext.RequestAborted)) > 0;)
            {
                if (file.Length + count > BundleLimits.MostBytes)
                    return TooLarge();
                await file.WriteAsync(part.AsMemory(0, count), request.HttpContext.RequestAborted);
            }
        }
        catch (BadHttpRequestException fault) when (fault.StatusCode == StatusCodes.Status413PayloadTooLarge)
        {
            return TooLarge();
        }
        catch (BadHttpRequestException)
        {
            return new(ServiceFailures.RequestUnreadable, ServiceTexts.Get("common.requestBodyCannotBeRead"), ServiceTexts.Get("common.sendAgain"));
        }
        catch (IOException)
        {
            return new(StorageFailures.StorageFull, ServiceTexts.Get("temporaryFile.diskDoesNotTakeFile"), ServiceTexts.Get("temporaryFile.freeSomeSpaceOnThen"));
        }

        file.Position = 0;
        return null;
    }

    private static Failure TooLarge() => new(ServiceFailures.RequestTooLarge, ServiceTexts.Word("temporaryFile.fileHasMoreThanMb", BundleLimits.MostBytes >> 20), ServiceTexts.Get("temporaryFile.handOverVisitFileAnd"));
}
