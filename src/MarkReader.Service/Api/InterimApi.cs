using System.ComponentModel;
using MarkReader.Application.Interim;
using MarkReader.Application.Storage;
using MarkReader.Quantities;
using MarkReader.Service.Api.Answers;
using MarkReader.Service.Hosting;
using MarkReader.Service.Problems;
using MarkReader.Service.Uploads;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;

namespace MarkReader.Service.Api;

/// <summary>Interim checks: reference photos that every version of the program measures again.</summary>
internal static class InterimApi
{
    private const string ProgressDescription = "Chosen at random for this request, 1 to 100 letters and digits; with it the progress can be asked for. A repeated request measures once more and keeps one result for each version.";

    public static void MapInterim(this IEndpointRouteBuilder app)
    {
        RouteGroupBuilder sets = app.MapGroup("/api/interim").WithTags("Interim checks");
        sets.MapGet("/", List).WithName("ListInterimSets").WithSummary("The sets of reference photos that are kept, newest first.");
        sets.MapPost("/", PostAsync).WithName("KeepInterimSet").WithSummary("Keep photos and what this version of the program measures in them.")
            .WithDescription(
                "Photos of cards with marks, as they are usually taken; the same bytes count once. They are measured without a camera's profile, so that what differs later comes from the program alone. "
                + "A photo that cannot be measured stays in the set with its refusal. 409 when there are as many sets as may be, 422 when no photo has a mark.")
            .Accepts<InterimUpload>("multipart/form-data")
            .ProducesProblems(UsualProblems.Photos);
        sets.MapGet("/{id:long}", Get).WithName("GetInterimSet").WithSummary("A set of reference photos, and how this version of the program measures it.").ProducesProblem(StatusCodes.Status404NotFound);
        sets.MapPost("/{id:long}/checks", CheckAsync).WithName("MeasureInterimSet").WithSummary("Measure a set again with this version of the program.")
            .WithDescription("The result is compared with what was kept: a mark that has left the region that was stated to hold it with 95 %, other marks, or a refusal where there was none, are flagged. A photo that is gone leaves the outcome open; 410 when all are gone.")
            .ProducesProblems(StatusCodes.Status404NotFound, StatusCodes.Status410Gone, StatusCodes.Status503ServiceUnavailable);
        sets.MapPost("/{id:long}/anew", KeepAnew).WithName("KeepInterimSetAnew").WithSummary("Keep what this version measured in a set as a set of its own; the earlier one stays.")
            .WithDescription("For when the program has become better. 409 when this version has not measured the set.")
            .ProducesProblems(StatusCodes.Status400BadRequest, StatusCodes.Status404NotFound, StatusCodes.Status409Conflict, StatusCodes.Status422UnprocessableEntity);
        sets.MapGet("/progress/{key}", Progress).WithName("GetInterimProgress").WithSummary("How many photos of a request that still runs are measured.");
        sets.MapDelete("/{id:long}", Delete).WithName("DeleteInterimSet").WithSummary("Delete a set, with those of its photos to which nothing else refers. A set's reference never changes, so that no version is asked for.")
            .ProducesProblem(StatusCodes.Status404NotFound);
    }

    private static Results<Ok<InterimList>, ProblemHttpResult> List(
        InterimStore sets,
        [Description("Number of the set before which the page starts.")] long? before,
        [Description("Sets on the page, 1 to 100.")] int limit = 20) =>
        sets.List(before, limit).TryGet(out Page<KeptInterimSet>? page, out Failure? failure)
            ? TypedResults.Ok(new InterimList(ProgramVersion.Current, sets.Due(ProgramVersion.Current), [.. page.Items.Select(InterimEntry.From)], page.Following("/api/interim", limit)))
            : Problem.From(failure);

    private static async Task<Results<Created<InterimAnswer>, ProblemHttpResult>> PostAsync(
        HttpContext context,
        InterimDispatch dispatch,
        [FromHeader(Name = "Idempotency-Key"), Description(Preconditions.KeyDescription)] string? key)
    {
        if (!(await UploadForm.ReadAsync(context.Request)).TryGet(out UploadForm? form, out Failure? failure))
            return Problem.From(failure);
        (KeptInterimSet? set, FieldFailure? wrong) = await dispatch.KeepAsync(form, form.Files(FormPhotos.Chosen), key, context.RequestAborted);
        return set is not null ? Created(set) : Problem.From(wrong!, context);
    }

    private static Results<Ok<InterimAnswer>, ProblemHttpResult> Get(InterimStore sets, [Description(Describing.InterimSet)] long id) =>
        sets.Find(id).TryGet(out KeptInterimSet? set, out Failure? failure) ? TypedResults.Ok(InterimAnswer.From(set)) : Problem.From(failure);

    private static async Task<Results<Ok<InterimAnswer>, ProblemHttpResult>> CheckAsync(
        HttpContext context,
        InterimDispatch dispatch,
        [Description(Describing.InterimSet)] long id,
        [FromHeader(Name = "Idempotency-Key"), Description(ProgressDescription)] string? key)
    {
        (KeptInterimSet? set, FieldFailure? wrong) = await dispatch.MeasureAsync(id, key, context.RequestAborted);
        return set is not null ? TypedResults.Ok(InterimAnswer.From(set)) : Problem.From(wrong!, context, isForm: false);
    }

    private static Results<Created<InterimAnswer>, ProblemHttpResult> KeepAnew(
        InterimDesk desk,
        [Description(Describing.InterimSet)] long id,
        [FromHeader(Name = "Idempotency-Key"), Description(Preconditions.KeyDescription)] string? key)
    {
        RequestKey? request = null;
        return (key is null || RequestKey.Of(key, InterimDispatch.Anew(id)).TryGet(out request, out Failure? failure)) && desk.KeepAnew(id, request).TryGet(out KeptInterimSet? set, out failure)
            ? Created(set)
            : Problem.From(failure);
    }

    private static Ok<MeasuringState> Progress(MeasuringProgress progress, [Description("The request's Idempotency-Key.")] string key) => TypedResults.Ok(progress.Of(key));

    private static Results<NoContent, ProblemHttpResult> Delete(InterimDesk desk, [Description(Describing.InterimSet)] long id) =>
        desk.Remove(id).TryGet(out _, out Failure? failure) ? TypedResults.NoContent() : Problem.From(failure);

    private static Created<InterimAnswer> Created(KeptInterimSet set) => TypedResults.Created(InterimAnswer.Address(set.Id), InterimAnswer.From(set));
}
