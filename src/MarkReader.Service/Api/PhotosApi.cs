using System.ComponentModel;
using MarkReader.Application.Reports;
using MarkReader.Application.Storage;
using MarkReader.Quantities;
using MarkReader.Service.Api.Answers;
using MarkReader.Service.Display;
using MarkReader.Service.Hosting;
using MarkReader.Service.Problems;
using MarkReader.Service.Texts;
using MarkReader.Service.Uploads;
using Microsoft.AspNetCore.Http.HttpResults;

namespace MarkReader.Service.Api;

/// <summary>Photos: sent, measured, listed, given back, deleted.</summary>
internal static class PhotosApi
{
    public static void MapPhotos(this IEndpointRouteBuilder app)
    {
        RouteGroupBuilder photos = app.MapGroup("/api/photos").WithTags("Photos");
        photos.MapPost("/", PostAsync).WithName("SendPhoto")
            .WithSummary("Keep a photo and measure it.")
            .WithDescription("The same bytes are kept once: 201 the first time, 200 after that. A photo that cannot be measured is kept all the same: 422, with its photoId.")
            .Accepts<PhotoUpload>("multipart/form-data")
            .ProducesProblems(StatusCodes.Status400BadRequest, StatusCodes.Status413PayloadTooLarge, StatusCodes.Status415UnsupportedMediaType, StatusCodes.Status422UnprocessableEntity, StatusCodes.Status503ServiceUnavailable);
        photos.MapGet("/", List).WithName("ListPhotos").WithSummary("The photos that are kept, newest first.");
        photos.MapGet("/{id}", Get).WithName("GetPhoto").WithSummary("A photo and what was measured in it last.").ProducesProblem(StatusCodes.Status404NotFound);
        photos.MapGet("/{id}/original", GetOriginal).WithName("GetOriginal").WithSummary("The bytes of a photo as they came in.")
            .Produces(StatusCodes.Status200OK, contentType: "image/jpeg", additionalContentTypes: ["image/png", "image/webp"])
            .ProducesProblems(StatusCodes.Status404NotFound, StatusCodes.Status410Gone);
        photos.MapGet("/{id}/spots", GetSpotsAsync).WithName("GetSpots")
            .WithSummary("Where marks are in a photo and where they may be, in px: what a user can choose from.")
            .ProducesProblems(StatusCodes.Status404NotFound, StatusCodes.Status410Gone, StatusCodes.Status422UnprocessableEntity, StatusCodes.Status503ServiceUnavailable);
        photos.MapDelete("/{id}", Delete).WithName("DeletePhoto").WithSummary("Delete a photo to which no result, visit or set of reference photos refers.")
            .ProducesProblems(StatusCodes.Status404NotFound, StatusCodes.Status409Conflict);
    }

    private static async Task<Results<Created<PhotoAnswer>, Ok<PhotoAnswer>, ProblemHttpResult>> PostAsync(
        HttpContext context, PhotoDesk desk, MeasuringTurns turns)
    {
        if (!(await UploadForm.ReadAsync(context.Request)).TryGet(out UploadForm? form, out Failure? failure))
            return Problem.From(failure);
        if (form.File("photo") is not { } file)
            return Problem.From(new(ServiceFailures.FieldMissing, ServiceTexts.Get("photosApi.formHoldsNoFileNamed"), ServiceTexts.Get("photosApi.addPhotoFormAsPhoto")), "photo");
        using IDisposable? turn = await turns.TakeTurnAsync(context.RequestAborted);
        if (turn is null)
            return Problem.Busy(context.Response);
        if (!desk.Keep(await UploadForm.BytesAsync(file, context.RequestAborted)).TryGet(out PhotoReceipt? receipt, out failure))
            return Problem.From(failure, "photo", reader: Reader.Of(context));
        string id = receipt.Photo.Id;
        if (!desk.Measure(id).TryGet(out KeptMeasurement? measurement, out failure))
            return Problem.From(failure, reader: Reader.Of(context));
        if (measurement.Answer is KeptAnswer.Refusal refusal)
            return Problem.From(refusal.Failure, "photo", new Dictionary<string, object?> { ["photoId"] = id }, Reader.Of(context));
        PhotoAnswer answer = PhotoAnswer.From(receipt.Photo, measurement);
        if (Reader.Of(context) is { } reader && answer.Measurement is { } measured)
            answer = answer with { Measurement = reader.Say(measured) };
        return receipt.IsNew ? TypedResults.Created("/api/photos/" + id, answer) : TypedResults.Ok(answer);
    }

    private static Results<Ok<PhotoList>, ProblemHttpResult> List(
        PhotoStore photos,
        [Description("Id of the photo after which the page starts.")] string? after,
        [Description("Photos on the page, 1 to 100.")] int limit = 20)
    {
        if (!photos.List(after, limit).TryGet(out Page<KeptPhoto>? page, out Failure? failure))
            return Problem.From(failure);
        string? next = page.Next is null ? null : $"/api/photos?after={page.Next}&limit={limit}";
        return TypedResults.Ok(new PhotoList([.. page.Items.Select(PhotoEntry.From)], next));
    }

    private static Results<Ok<PhotoAnswer>, ProblemHttpResult> Get(PhotoStore photos, [Description("The photo's id.")] string id)
    {
        if (!photos.Find(id).TryGet(out KeptPhoto? photo, out Failure? failure))
            return Problem.From(failure);
        photos.FindMeasurement(id).TryGet(out KeptMeasurement? measurement, out _);
        return TypedResults.Ok(PhotoAnswer.From(photo, measurement));
    }

    private static Results<FileContentHttpResult, ProblemHttpResult> GetOriginal(PhotoStore photos, [Description("The photo's id.")] string id) =>
        photos.Read(id).TryGet(out Original? original, out Failure? failure)
            ? TypedResults.File(original.Bytes, original.Photo.Format.MediaType)
            : Problem.From(failure);

    private static async Task<Results<Ok<SpotsReport>, ProblemHttpResult>> GetSpotsAsync(
        HttpContext context, PhotoDesk desk, MeasuringTurns turns, [Description("The photo's id.")] string id)
    {
        using IDisposable? turn = await turns.TakeTurnAsync(context.RequestAborted);
        if (turn is null)
            return Problem.Busy(context.Response);
        Figures? reader = Reader.Of(context);
        return desk.Spots(id).TryGet(out SpotsReport? spots, out Failure? failure)
            ? TypedResults.Ok(reader?.Say(spots) ?? spots)
            : Problem.From(failure, reader: reader);
    }

    private static Results<NoContent, ProblemHttpResult> Delete(PhotoStore photos, [Description("The photo's id.")] string id) =>
        photos.Delete(id).TryGet(out _, out Failure? failure) ? TypedResults.NoContent() : Problem.From(failure);
}
