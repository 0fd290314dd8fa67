using System.ComponentModel;
using System.Globalization;
using MarkReader.Application.Storage;
using MarkReader.Application.VisitLog;
using MarkReader.Quantities;
using MarkReader.Service.Api.Answers;
using MarkReader.Service.Problems;
using MarkReader.Service.Uploads;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;

namespace MarkReader.Service.Api;

/// <summary>Visits: begun with a machine, listed, given back with the next action, deleted.</summary>
internal static class VisitsApi
{
    public static void MapVisits(this IEndpointRouteBuilder app)
    {
        RouteGroupBuilder visits = app.MapGroup("/api/visits").WithTags("Visits");
        visits.MapGet("/", List).WithName("ListVisits").WithSummary("The visits that are kept, newest first.");
        visits.MapPost("/", PostAsync).WithName("BeginVisit").WithSummary("Begin a visit to a machine that is kept.")
            .WithDescription("The visit keeps a copy of the machine's document: later changes of the machine do not touch it. A request that is repeated with its Idempotency-Key gives the visit that it began.")
            .Accepts<VisitToBegin>("application/json")
            .ProducesProblems(StatusCodes.Status400BadRequest, StatusCodes.Status404NotFound, StatusCodes.Status413PayloadTooLarge, StatusCodes.Status409Conflict, StatusCodes.Status415UnsupportedMediaType, StatusCodes.Status422UnprocessableEntity);
        visits.MapGet("/{id:long}", Get).WithName("GetVisit").WithSummary("A visit with its machine, its events and the next action; its version is the ETag.")
            .WithDescription("With If-None-Match the answer is 304 while the version is the same: a cheap way to see what another phone does.")
            .Produces(StatusCodes.Status304NotModified)
            .ProducesProblem(StatusCodes.Status404NotFound);
        visits.MapGet("/{id:long}/file", GetFile).WithName("GetVisitFile").WithSummary("The visit file, which advise reads: the same advice comes from both.")
            .Produces(StatusCodes.Status200OK, contentType: "application/json")
            .ProducesProblem(StatusCodes.Status404NotFound);
        visits.MapPut("/{id:long}/words", PutWordsAsync).WithName("ChangeVisitWords").WithSummary("Change the note and who does the work.")
            .Accepts<VisitWordsToChange>("application/json")
            .ProducesProblems(StatusCodes.Status400BadRequest, StatusCodes.Status404NotFound, StatusCodes.Status412PreconditionFailed, StatusCodes.Status413PayloadTooLarge, StatusCodes.Status415UnsupportedMediaType, StatusCodes.Status428PreconditionRequired);
        visits.MapDelete("/{id:long}", Delete).WithName("DeleteVisit").WithSummary("Delete a visit with its events. Its photos stay until they are deleted.")
            .ProducesProblems(StatusCodes.Status404NotFound, StatusCodes.Status412PreconditionFailed, StatusCodes.Status428PreconditionRequired);
    }

    private static Results<Ok<VisitList>, ProblemHttpResult> List(
        VisitStore visits,
        [Description("Number of the visit before which the page starts.")] long? before,
        [Description("Only visits that were begun with the machine of this number.")] long? machine,
        [Description("Visits on the page, 1 to 100.")] int limit = 20)
    {
        if (!visits.List(before, limit, machine).TryGet(out Page<VisitEntry>? page, out Failure? failure))
            return Problem.From(failure);
        return TypedResults.Ok(new VisitList(page.Items, page.Following("/api/visits", limit, machine is null ? "" : string.Create(CultureInfo.InvariantCulture, $"&machine={machine}"))));
    }

    private static async Task<Results<Created<VisitAnswer>, ProblemHttpResult>> PostAsync(
        HttpContext context,
        VisitStore visits,
        [FromHeader(Name = "Idempotency-Key"), Description(Preconditions.KeyDescription)] string? key)
    {
        RequestKey? request = null;
        if (!(await JsonBody.ReadAsync(context.Request, VisitBeginning.MostBytes)).TryGet(out byte[]? bytes, out Failure? failure)
            || !VisitBeginning.Read(bytes).TryGet(out VisitBeginning? beginning, out failure)
            || (key is not null && !RequestKey.Of(key, bytes).TryGet(out request, out failure))
            || !visits.Begin(beginning, request).TryGet(out KeptVisit? visit, out failure))
            return Problem.From(failure);
        Preconditions.SetTag(context, visit.Entry.Version);
        return TypedResults.Created(VisitAnswer.Address(visit.Entry.Id), VisitAnswer.From(visit));
    }

    private static Results<Ok<VisitAnswer>, StatusCodeHttpResult, ProblemHttpResult> Get(
        HttpContext context,
        VisitStore visits,
        [Description(Describing.Visit)] long id,
        [FromHeader(Name = "If-None-Match"), Description("The ETag of an earlier answer.")] string? ifNoneMatch)
    {
        if (!visits.Find(id).TryGet(out KeptVisit? visit, out Failure? failure))
            return Problem.From(failure);
        Preconditions.SetTag(context, visit.Entry.Version);
        return !string.IsNullOrWhiteSpace(ifNoneMatch) && Preconditions.Optional(ifNoneMatch).TryGet(out ExpectedVersion? seen, out _) && seen.Admits(visit.Entry.Version)
            ? TypedResults.StatusCode(StatusCodes.Status304NotModified)
            : TypedResults.Ok(VisitAnswer.From(visit));
    }

    private static Results<ContentHttpResult, ProblemHttpResult> GetFile(HttpContext context, VisitStore visits, [Description(Describing.Visit)] long id)
    {
        if (!visits.Find(id).TryGet(out KeptVisit? visit, out Failure? failure))
            return Problem.From(failure);
        Preconditions.SetTag(context, visit.Entry.Version);
        return TypedResults.Content(visit.File(), "application/json; charset=utf-8");
    }

    private static async Task<Results<Ok<VisitAnswer>, ProblemHttpResult>> PutWordsAsync(
        HttpContext context,
        VisitStore visits,
        [Description(Describing.Visit)] long id,
        [FromHeader(Name = "If-Match"), Description(Preconditions.Description)] string? ifMatch)
    {
        if (!Preconditions.Required(ifMatch).TryGet(out ExpectedVersion? expected, out Failure? failure)
            || !(await JsonBody.ReadAsync(context.Request, VisitBeginning.MostBytes)).TryGet(out byte[]? bytes, out failure)
            || !VisitDescription.Read(bytes).TryGet(out VisitDescription? words, out failure))
            return Problem.From(failure);
        return VisitReplies.Of(context, visits.Describe(id, words, expected));
    }

    private static Results<NoContent, ProblemHttpResult> Delete(
        VisitStore visits,
        [Description(Describing.Visit)] long id,
        [FromHeader(Name = "If-Match"), Description(Preconditions.Description)] string? ifMatch) =>
        Preconditions.Required(ifMatch).TryGet(out ExpectedVersion? expected, out Failure? failure) && visits.Remove(id, expected).TryGet(out _, out failure)
            ? TypedResults.NoContent()
            : Problem.From(failure);
}
