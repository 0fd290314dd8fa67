using MarkReader.Application.VisitLog;
using MarkReader.Quantities;
using MarkReader.Service.Api.Answers;
using MarkReader.Service.Problems;
using Microsoft.AspNetCore.Http.HttpResults;

namespace MarkReader.Service.Api;

/// <summary>A visit as an answer, with its version as the ETag.</summary>
internal static class VisitReplies
{
    public static Results<Ok<VisitAnswer>, ProblemHttpResult> Of(HttpContext context, Outcome<KeptVisit> found)
    {
        if (!found.TryGet(out KeptVisit? visit, out Failure? failure))
            return Problem.From(failure);
        Preconditions.SetTag(context, visit.Entry.Version);
        return TypedResults.Ok(VisitAnswer.From(visit));
    }
}
