using System.ComponentModel;
using MarkReader.Application.Cameras;
using MarkReader.Application.Storage;
using MarkReader.Drawing.Cards;
using MarkReader.Quantities;
using MarkReader.Service.Api.Answers;
using MarkReader.Service.Hosting;
using MarkReader.Service.Problems;
using MarkReader.Service.Texts;
using MarkReader.Service.Uploads;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;

namespace MarkReader.Service.Api;

/// <summary>Calibrations: the board to print, photos of it, which views are missing, and the camera that comes of them.</summary>
internal static class CalibrationsApi
{
    public static void MapCalibrations(this IEndpointRouteBuilder app)
    {
        RouteGroupBuilder calibrations = app.MapGroup("/api/calibrations").WithTags("Calibrations");
        calibrations.MapGet("/board.pdf", GetBoard).WithName("GetBoard").WithSummary("The calibration board to print, at exact size.")
            .Produces(StatusCodes.Status200OK, contentType: "application/pdf")
            .ProducesProblem(StatusCodes.Status400BadRequest);
        calibrations.MapGet("/", List).WithName("ListCalibrations").WithSummary("The calibrations that are kept, newest first.");
        calibrations.MapPost("/", Post).WithName("BeginCalibration").WithSummary("Begin a calibration. It needs no body.")
            .ProducesProblems(StatusCodes.Status400BadRequest, StatusCodes.Status409Conflict);
        calibrations.MapGet("/{id:long}", Get).WithName("GetCalibration").WithSummary("A calibration: its photos and the views that are still missing; its version is the ETag.").ProducesProblem(StatusCodes.Status404NotFound);
        calibrations.MapPost("/{id:long}/photos", PostPhotoAsync).WithName("AddBoardPhoto").WithSummary("Measure a photo of the board and add it.")
            .WithDescription(
                "The photo itself is not kept. 200 when the same bytes are sent again: they count once. A photo that is not used (no board in it, another size, another lens) stays in the list all the "
                + "same: 422, with its number. Photos of the size and lens of most are used, whichever came first.")
            .Accepts<BoardUpload>("multipart/form-data")
            .ProducesProblems(UsualProblems.Photo);
        calibrations.MapDelete("/{id:long}/photos/{number:int}", DeletePhoto).WithName("RemoveBoardPhoto").WithSummary("Remove a photo.")
            .ProducesProblems(UsualProblems.Change);
        calibrations.MapPut("/{id:long}/camera", PutCameraAsync).WithName("MakeCamera").WithSummary("Make the camera's profile of the photos, and use it from now on.")
            .WithDescription("201 the first time; 200 when it takes the place of the profile that this calibration gave before. 422 when there are too few photos or they do not determine the camera.")
            .Accepts<CameraToMake>("application/json")
            .ProducesProblems(StatusCodes.Status400BadRequest, StatusCodes.Status404NotFound, StatusCodes.Status409Conflict, StatusCodes.Status412PreconditionFailed, StatusCodes.Status413PayloadTooLarge, StatusCodes.Status415UnsupportedMediaType, StatusCodes.Status422UnprocessableEntity, StatusCodes.Status428PreconditionRequired, StatusCodes.Status503ServiceUnavailable);
        calibrations.MapDelete("/{id:long}", Delete).WithName("DeleteCalibration").WithSummary("Delete a calibration. The camera that it gave stays.")
            .ProducesProblems(UsualProblems.Change);
    }

    private static Results<FileContentHttpResult, ProblemHttpResult> GetBoard([Description("The page: a4 (unless said otherwise) or letter.")] string? paper) =>
        Paper.Find(paper ?? Paper.A4.Name).TryGet(out Paper? page, out Failure? failure) ? TypedResults.File(PrintBoard.Pdf(page), "application/pdf") : Problem.From(failure);

    private static Results<Ok<CalibrationList>, ProblemHttpResult> List(
        CalibrationStore calibrations,
        [Description("Number of the calibration before which the page starts.")] long? before,
        [Description("Calibrations on the page, 1 to 100.")] int limit = 20) =>
        calibrations.List(before, limit).TryGet(out Page<CalibrationEntry>? page, out Failure? failure)
            ? TypedResults.Ok(new CalibrationList(page.Items, page.Following("/api/calibrations", limit)))
            : Problem.From(failure);

    private static Results<Created<CalibrationAnswer>, ProblemHttpResult> Post(
        HttpContext context,
        CalibrationStore calibrations,
        [FromHeader(Name = "Idempotency-Key"), Description(Preconditions.KeyDescription)] string? key)
    {
        RequestKey? request = null;
        if ((key is not null && !RequestKey.Of(key, []).TryGet(out request, out Failure? failure))
            || !calibrations.Begin(request).TryGet(out KeptCalibration? begun, out failure))
            return Problem.From(failure!);
        Preconditions.SetTag(context, begun.Entry.Version);
        return TypedResults.Created(CalibrationAnswer.Address(begun.Entry.Id), CalibrationAnswer.From(begun));
    }

    private static Results<Ok<CalibrationAnswer>, ProblemHttpResult> Get(HttpContext context, CalibrationStore calibrations, [Description(Describing.Calibration)] long id) =>
        Reply(context, calibrations.Find(id));

    private static async Task<Results<Created<CalibrationAnswer>, Ok<CalibrationAnswer>, ProblemHttpResult>> PostPhotoAsync(
        HttpContext context, CalibrationDesk desk, MeasuringTurns turns, [Description(Describing.Calibration)] long id)
    {
        if (!(await UploadForm.ReadAsync(context.Request)).TryGet(out UploadForm? form, out Failure? failure))
            return Problem.From(failure);
        if (form.File("photo") is not { } file)
            return Problem.From(new(ServiceFailures.FieldMissing, ServiceTexts.Get("photosApi.formHoldsNoFileNamed"), ServiceTexts.Get("photosApi.addPhotoFormAsPhoto")), "photo");
        using IDisposable? turn = await turns.TakeTurnAsync(context.RequestAborted);
        if (turn is null)
            return Problem.Busy(context.Response);
        if (!desk.Add(id, await UploadForm.BytesAsync(file, context.RequestAborted), file.FileName).TryGet(out BoardPhotoReceipt? receipt, out failure))
            return Problem.From(failure, "photo", reader: Reader.Of(context));
        CalibrationAnswer answer = CalibrationAnswer.From(receipt.Calibration);
        Preconditions.SetTag(context, answer.Version);
        if (CalibrationStanding.Of(receipt.Calibration).Photos.First(p => p.Kept.Number == receipt.Number).NotUsed is { } refusal)
            return Problem.Unusable(refusal, "photo", new Dictionary<string, object?> { ["number"] = receipt.Number }, Reader.Of(context));
        return receipt.IsNew ? TypedResults.Created(CalibrationAnswer.Address(id), answer) : TypedResults.Ok(answer);
    }

    private static Results<Ok<CalibrationAnswer>, ProblemHttpResult> DeletePhoto(
        HttpContext context,
        CalibrationStore calibrations,
        [Description(Describing.Calibration)] long id,
        [Description("The photo's number.")] int number,
        [FromHeader(Name = "If-Match"), Description(Preconditions.Description)] string? ifMatch) =>
        Preconditions.Required(ifMatch).TryGet(out ExpectedVersion? expected, out Failure? failure) ? Reply(context, calibrations.RemovePhoto(id, number, expected)) : Problem.From(failure);

    private static async Task<Results<Created<CameraAnswer>, Ok<CameraAnswer>, ProblemHttpResult>> PutCameraAsync(
        HttpContext context,
        CalibrationDesk desk,
        CameraStore cameras,
        MeasuringTurns turns,
        [Description(Describing.Calibration)] long id,
        [FromHeader(Name = "If-Match"), Description(Preconditions.Description)] string? ifMatch)
    {
        if (!Preconditions.Required(ifMatch).TryGet(out ExpectedVersion? expected, out Failure? failure)
            || !(await JsonBody.ReadAsync(context.Request, CalibrationDesk.MostNameBytes)).TryGet(out byte[]? bytes, out failure)
            || !CalibrationDesk.ReadName(bytes).TryGet(out string? name, out failure))
            return Problem.From(failure);
        using IDisposable? turn = await turns.TakeTurnAsync(context.RequestAborted);
        if (turn is null)
            return Problem.Busy(context.Response);
        if (!desk.Finish(id, name, expected).TryGet(out KeptCamera? camera, out failure) || !cameras.All().TryGet(out KeptCameras? all, out failure))
            return Problem.From(failure);
        Preconditions.SetTag(context, camera.Version);
        CameraAnswer answer = CameraAnswer.From(camera, all);
        return camera.Version == 1 ? TypedResults.Created(CameraAnswer.Address(camera.Id), answer) : TypedResults.Ok(answer);
    }

    private static Results<NoContent, ProblemHttpResult> Delete(
        CalibrationStore calibrations,
        [Description(Describing.Calibration)] long id,
        [FromHeader(Name = "If-Match"), Description(Preconditions.Description)] string? ifMatch) =>
        Preconditions.Required(ifMatch).TryGet(out ExpectedVersion? expected, out Failure? failure) && calibrations.Remove(id, expected).TryGet(out _, out failure)
            ? TypedResults.NoContent()
            : Problem.From(failure);

    private static Results<Ok<CalibrationAnswer>, ProblemHttpResult> Reply(HttpContext context, Outcome<KeptCalibration> found)
    {
        if (!found.TryGet(out KeptCalibration? calibration, out Failure? failure))
            return Problem.From(failure);
        Preconditions.SetTag(context, calibration.Entry.Version);
        return TypedResults.Ok(CalibrationAnswer.From(calibration));
    }
}
