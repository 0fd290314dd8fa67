using System.ComponentModel;
using System.Text.Json;
using MarkReader.Application.Cameras;
using MarkReader.Application.Storage;
using MarkReader.Cameras.Profiles;
using MarkReader.Quantities;
using MarkReader.Service.Api.Answers;
using MarkReader.Service.Problems;
using MarkReader.Service.Uploads;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;

namespace MarkReader.Service.Api;

/// <summary>Cameras: their profiles listed, given out, taken in, deleted. A calibration makes them.</summary>
internal static class CamerasApi
{
    public static void MapCameras(this IEndpointRouteBuilder app)
    {
        RouteGroupBuilder cameras = app.MapGroup("/api/cameras").WithTags("Cameras");
        cameras.MapGet("/", List).WithName("ListCameras").WithSummary("The cameras that are kept, newest first.");
        cameras.MapPost("/", PostAsync).WithName("AddCamera").WithSummary("Keep a camera's profile.")
            .WithDescription("The body is a profile, as this service and the command camera write it. Photos whose files name its camera and lens are measured with it from now on; of several profiles of one lens the one made last is used. A profile that is kept already, under whatever name, is not added: the answer is then 200 with the camera that has it.")
            .Accepts<JsonElement>("application/json")
            .ProducesProblems(StatusCodes.Status400BadRequest, StatusCodes.Status409Conflict, StatusCodes.Status413PayloadTooLarge, StatusCodes.Status415UnsupportedMediaType, StatusCodes.Status422UnprocessableEntity);
        cameras.MapGet("/{id:long}", Get).WithName("GetCamera").WithSummary("A camera; its version is the ETag.").ProducesProblem(StatusCodes.Status404NotFound);
        cameras.MapGet("/{id:long}/file", GetFile).WithName("GetCameraFile").WithSummary("A camera's profile alone, for another service or for --camera on the command line.")
            .Produces(StatusCodes.Status200OK, contentType: "application/json")
            .ProducesProblem(StatusCodes.Status404NotFound);
        cameras.MapDelete("/{id:long}", Delete).WithName("DeleteCamera").WithSummary("Delete a camera. What was measured with it stays as it was measured.")
            .ProducesProblems(UsualProblems.Change);
    }

    private static Results<Ok<CameraList>, ProblemHttpResult> List(CameraStore cameras) => cameras.All().TryGet(out KeptCameras? all, out Failure? failure)
        ? TypedResults.Ok(new CameraList([.. all.Cameras.Select(c => CameraEntry.From(c, all))]))
        : Problem.From(failure);

    private static async Task<Results<Created<CameraAnswer>, Ok<CameraAnswer>, ProblemHttpResult>> PostAsync(
        HttpContext context,
        CameraStore cameras,
        [FromHeader(Name = "Idempotency-Key"), Description(Preconditions.KeyDescription)] string? key)
    {
        RequestKey? request = null;
        if (!(await JsonBody.ReadAsync(context.Request, CameraProfileFile.MostBytes)).TryGet(out byte[]? bytes, out Failure? failure)
            || !CameraProfileFile.Read(bytes).TryGet(out CameraProfile? profile, out failure)
            || (key is not null && !RequestKey.Of(key, bytes).TryGet(out request, out failure))
            || !cameras.Add(profile, request).TryGet(out KeptCamera? camera, out failure)
            || !cameras.All().TryGet(out KeptCameras? all, out failure))
            return Problem.From(failure);
        Preconditions.SetTag(context, camera.Version);
        return camera.WasThere ? TypedResults.Ok(CameraAnswer.From(camera, all)) : TypedResults.Created(CameraAnswer.Address(camera.Id), CameraAnswer.From(camera, all));
    }

    private static Results<Ok<CameraAnswer>, ProblemHttpResult> Get(HttpContext context, CameraStore cameras, [Description(Describing.Camera)] long id)
    {
        if (!cameras.Find(id).TryGet(out KeptCamera? camera, out Failure? failure) || !cameras.All().TryGet(out KeptCameras? all, out failure))
            return Problem.From(failure);
        Preconditions.SetTag(context, camera.Version);
        return TypedResults.Ok(CameraAnswer.From(camera, all));
    }

    private static Results<ContentHttpResult, ProblemHttpResult> GetFile(HttpContext context, CameraStore cameras, [Description(Describing.Camera)] long id)
    {
        if (!cameras.Find(id).TryGet(out KeptCamera? camera, out Failure? failure))
            return Problem.From(failure);
        Preconditions.SetTag(context, camera.Version);
        return TypedResults.Content(CameraProfileFile.Write(camera.Profile), "application/json; charset=utf-8");
    }

    private static Results<NoContent, ProblemHttpResult> Delete(
        CameraStore cameras,
        [Description(Describing.Camera)] long id,
        [FromHeader(Name = "If-Match"), Description(Preconditions.Description)] string? ifMatch) =>
        Preconditions.Required(ifMatch).TryGet(out ExpectedVersion? expected, out Failure? failure) && cameras.Remove(id, expected).TryGet(out _, out failure)
            ? TypedResults.NoContent()
            : Problem.From(failure);
}
