using System.ComponentModel;
using System.Text.Json;
using MarkReader.Application.Practising;
using MarkReader.Application.Storage;
using MarkReader.Application.VisitLog;
using MarkReader.Quantities;
using MarkReader.Service.Api.Answers;
using MarkReader.Service.Hosting;
using MarkReader.Service.Problems;
using MarkReader.Service.Uploads;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;

namespace MarkReader.Service.Api;

/// <summary>The events of a visit: added, taken back; and pulses on a practice machine.</summary>
internal static class VisitEventsApi
{
    public static void MapVisitEvents(this IEndpointRouteBuilder app)
    {
        RouteGroupBuilder visits = app.MapGroup("/api/visits").WithTags("Visits");
        visits.MapPost("/{id:long}/events", PostEventAsync).WithName("AddEvent").WithSummary("Add an event to a visit, and learn what to do next.")
            .WithDescription(
                "The body is one event, as a visit file has it; for a mark or a survey mark photo (the id of a photo that is kept) and mark (its number in the photo's marks, from 0) or tap (a place in the photo, px) can stand in place of u, v and "
                + "their uncertainty; the scatter of the machine's pulses is then added. A request that is repeated with its Idempotency-Key is answered as it was the first time and adds nothing; 422 when the key came with another event.")
            .Accepts<JsonElement>("application/json")
            .ProducesProblems(StatusCodes.Status400BadRequest, StatusCodes.Status404NotFound, StatusCodes.Status409Conflict, StatusCodes.Status412PreconditionFailed, StatusCodes.Status413PayloadTooLarge, StatusCodes.Status415UnsupportedMediaType, StatusCodes.Status422UnprocessableEntity);
        visits.MapDelete("/{id:long}/events/last", DeleteLast).WithName("TakeBackEvent").WithSummary("Take back the last event that counts. It stays in the record.")
            .WithDescription("If-Match is asked for because a repeated request would otherwise take back another event.")
            .ProducesProblems(StatusCodes.Status404NotFound, StatusCodes.Status409Conflict, StatusCodes.Status412PreconditionFailed, StatusCodes.Status428PreconditionRequired);
        visits.MapDelete("/{id:long}/events/{number:int}", DeleteOne).WithName("TakeBackOneEvent").WithSummary("Take back one event that counts, whatever came after it. It stays in the record.")
            .WithDescription("What follows is advised as if the event had not been. If-Match is asked for because someone else may have gone on meanwhile.")
            .ProducesProblems(UsualProblems.Change);
        visits.MapGet("/{id:long}/pulse", GetPulseAsync).WithName("FirePracticePulse").WithSummary("On a practice machine: fire the pulse that is asked for and get a photo of its mark.")
            .WithDescription("Nothing is kept: send the photo to /api/photos and add the mark as an event, as with a real machine. At one version of the visit the photo is always the same.")
            .Produces(StatusCodes.Status200OK, contentType: "image/jpeg")
            .ProducesProblems(StatusCodes.Status404NotFound, StatusCodes.Status409Conflict, StatusCodes.Status422UnprocessableEntity, StatusCodes.Status503ServiceUnavailable);
    }

    private static async Task<Results<Created<StepAnswer>, ProblemHttpResult>> PostEventAsync(
        HttpContext context,
        VisitDesk desk,
        [Description(Describing.Visit)] long id,
        [FromHeader(Name = "Idempotency-Key"), Description("Chosen at random for this event, 1 to 100 letters and digits; a repeated request has the same one.")] string? key,
        [FromHeader(Name = "If-Match"), Description(Preconditions.Description + " Without it the event is added to whatever is kept.")] string? ifMatch)
    {
        if (!(await JsonBody.ReadAsync(context.Request, VisitDesk.MostEventBytes)).TryGet(out byte[]? bytes, out Failure? failure)
            || !Preconditions.Optional(ifMatch).TryGet(out ExpectedVersion? expected, out failure)
            || !desk.Append(id, bytes, key ?? "", expected).TryGet(out VisitAddition? step, out failure))
            return Problem.From(failure);
        Preconditions.SetTag(context, step.Event.AddedVersion);
        return TypedResults.Created(VisitAnswer.Address(id), StepAnswer.From(step));
    }

    private static Results<Ok<VisitAnswer>, ProblemHttpResult> DeleteLast(
        HttpContext context,
        VisitDesk visits,
        [Description(Describing.Visit)] long id,
        [FromHeader(Name = "If-Match"), Description(Preconditions.Description)] string? ifMatch) =>
        Preconditions.Required(ifMatch).TryGet(out ExpectedVersion? expected, out Failure? failure) ? VisitReplies.Of(context, visits.TakeBack(id, expected)) : Problem.From(failure);

    private static Results<Ok<VisitAnswer>, ProblemHttpResult> DeleteOne(
        HttpContext context,
        VisitDesk visits,
        [Description(Describing.Visit)] long id,
        [Description("The event's number.")] int number,
        [FromHeader(Name = "If-Match"), Description(Preconditions.Description)] string? ifMatch) =>
        Preconditions.Required(ifMatch).TryGet(out ExpectedVersion? expected, out Failure? failure) ? VisitReplies.Of(context, visits.TakeBack(id, number, expected)) : Problem.From(failure);

    private static async Task<Results<FileContentHttpResult, ProblemHttpResult>> GetPulseAsync(
        HttpContext context, VisitStore visits, MeasuringTurns turns, [Description(Describing.Visit)] long id)
    {
        using IDisposable? turn = await turns.TakeTurnAsync(context.RequestAborted);
        if (turn is null)
            return Problem.Busy(context.Response);
        return visits.Find(id).TryGet(out KeptVisit? visit, out Failure? failure) && PracticePulses.Fire(visit).TryGet(out byte[]? photo, out failure)
            ? TypedResults.File(photo, "image/jpeg")
            : Problem.From(failure);
    }
}
