using System.ComponentModel;
using System.Text.Json;
using MarkReader.Application.Storage;
using MarkReader.Application.VisitLog;
using MarkReader.Quantities;
using MarkReader.Service.Api.Answers;
using MarkReader.Service.Problems;
using MarkReader.Service.Uploads;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;

namespace MarkReader.Service.Api;

/// <summary>Visits: begun with a machine, continued event by event, given back with the next action.</summary>
internal static class VisitsApi
{
    public static void MapVisits(this IEndpointRouteBuilder app)
    {
        RouteGroupBuilder visits = app.MapGroup("/api/visits").WithTags("Visits");
        visits.MapGet("/", List).WithName("ListVisits").WithSummary("The visits that are kept, newest first.");
        visits.MapPost("/", PostAsync).WithName("BeginVisit").WithSummary("Begin a visit to a machine that is kept.")
            .WithDescription("The visit keeps a copy of the machine's document: later changes of the machine do not touch it.")
            .Accepts<VisitToBegin>("application/json")
            .ProducesProblem(StatusCodes.Status400BadRequest)
            .ProducesProblem(StatusCodes.Status404NotFound)
            .ProducesProblem(StatusCodes.Status413PayloadTooLarge)
            .ProducesProblem(StatusCodes.Status415UnsupportedMediaType);
        visits.MapGet("/{id:long}", Get).WithName("GetVisit").WithSummary("A visit with its machine, its events and the next action; its version is the ETag.")
            .ProducesProblem(StatusCodes.Status404NotFound);
        visits.MapGet("/{id:long}/file", GetFile).WithName("GetVisitFile").WithSummary("The visit file, which advise reads: the same advice comes from both.")
            .Produces(StatusCodes.Status200OK, contentType: "application/json")
            .ProducesProblem(StatusCodes.Status404NotFound);
        visits.MapPost("/{id:long}/events", PostEventAsync).WithName("AddEvent").WithSummary("Add an event to a visit, and learn what to do next.")
            .WithDescription(
                "The body is one event, as a visit file has it; for a mark or a survey mark photo (the id of a photo that is kept) and mark (its number in the photo's marks, from 0) can stand in place of u, v and "
                + "their uncertainty. A request that is repeated with its Idempotency-Key is answered as it was the first time and adds nothing; 422 when the key came with another event.")
            .Accepts<JsonElement>("application/json")
            .ProducesProblem(StatusCodes.Status400BadRequest)
            .ProducesProblem(StatusCodes.Status404NotFound)
            .ProducesProblem(StatusCodes.Status412PreconditionFailed)
            .ProducesProblem(StatusCodes.Status413PayloadTooLarge)
            .ProducesProblem(StatusCodes.Status415UnsupportedMediaType)
            .ProducesProblem(StatusCodes.Status422UnprocessableEntity);
        visits.MapDelete("/{id:long}/events/last", DeleteLast).WithName("TakeBackEvent").WithSummary("Take back the last event that counts. It stays in the record.")
            .WithDescription("If-Match is asked for because a repeated request would otherwise take back another event.")
            .ProducesProblem(StatusCodes.Status404NotFound)
            .ProducesProblem(StatusCodes.Status409Conflict)
            .ProducesProblem(StatusCodes.Status412PreconditionFailed)
            .ProducesProblem(StatusCodes.Status428PreconditionRequired);
    }

    private static Results<Ok<VisitList>, ProblemHttpResult> List(
        VisitStore visits,
        [Description("Number of the visit before which the page starts.")] long? before,
        [Description("Visits on the page, 1 to 100.")] int limit = 20)
    {
        if (!visits.List(before, limit).TryGet(out Page<VisitEntry>? page, out Failure? failure))
            return Problem.From(failure);
        return TypedResults.Ok(new VisitList(page.Items, page.Following("/api/visits", limit)));
    }

    private static async Task<Results<Created<VisitAnswer>, ProblemHttpResult>> PostAsync(HttpContext context, VisitStore visits)
    {
        if (!(await JsonBody.ReadAsync(context.Request, VisitBeginning.MostBytes)).TryGet(out byte[]? bytes, out Failure? failure)
            || !VisitBeginning.Read(bytes).TryGet(out VisitBeginning? beginning, out failure)
            || !visits.Begin(beginning).TryGet(out KeptVisit? visit, out failure))
            return Problem.From(failure);
        Preconditions.SetTag(context, visit.Entry.Version);
        return TypedResults.Created(VisitAnswer.Address(visit.Entry.Id), VisitAnswer.From(visit));
    }

    private static Results<Ok<VisitAnswer>, ProblemHttpResult> Get(HttpContext context, VisitStore visits, [Description("The visit's number.")] long id) =>
        Answer(context, visits.Find(id));

    private static Results<ContentHttpResult, ProblemHttpResult> GetFile(HttpContext context, VisitStore visits, [Description("The visit's number.")] long id)
    {
        if (!visits.Find(id).TryGet(out KeptVisit? visit, out Failure? failure))
            return Problem.From(failure);
        Preconditions.SetTag(context, visit.Entry.Version);
        return TypedResults.Content(visit.File(), "application/json; charset=utf-8");
    }

    private static async Task<Results<Created<StepAnswer>, ProblemHttpResult>> PostEventAsync(
        HttpContext context,
        VisitDesk desk,
        [Description("The visit's number.")] long id,
        [FromHeader(Name = "Idempotency-Key"), Description("Chosen at random for this event, 1 to 100 letters and digits; a repeated request has the same one.")] string? key,
        [FromHeader(Name = "If-Match"), Description(Preconditions.Description + " Without it the event is added to whatever is kept.")] string? ifMatch)
    {
        if (!(await JsonBody.ReadAsync(context.Request, VisitDesk.MostEventBytes)).TryGet(out byte[]? bytes, out Failure? failure)
            || !desk.Append(id, bytes, key ?? "", Preconditions.Optional(ifMatch)).TryGet(out VisitStep? step, out failure))
            return Problem.From(failure);
        Preconditions.SetTag(context, step.Event.AddedVersion);
        return TypedResults.Created(VisitAnswer.Address(id), StepAnswer.From(step));
    }

    private static Results<Ok<VisitAnswer>, ProblemHttpResult> DeleteLast(
        HttpContext context,
        VisitStore visits,
        [Description("The visit's number.")] long id,
        [FromHeader(Name = "If-Match"), Description(Preconditions.Description)] string? ifMatch) =>
        Preconditions.Required(ifMatch).TryGet(out ExpectedVersion? expected, out Failure? failure) ? Answer(context, visits.TakeBack(id, expected)) : Problem.From(failure);

    private static Results<Ok<VisitAnswer>, ProblemHttpResult> Answer(HttpContext context, Outcome<KeptVisit> found)
    {
        if (!found.TryGet(out KeptVisit? visit, out Failure? failure))
            return Problem.From(failure);
        Preconditions.SetTag(context, visit.Entry.Version);
        return TypedResults.Ok(VisitAnswer.From(visit));
    }
}
