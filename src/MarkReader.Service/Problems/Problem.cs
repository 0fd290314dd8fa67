using System.Globalization;
using MarkReader.Quantities;
using MarkReader.Service.Hosting;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.WebUtilities;

namespace MarkReader.Service.Problems;

/// <summary>A refusal as problem details (RFC 9457): detail is what is wrong; the members code and hint are ours, and field where a field of the form is meant.</summary>
internal static class Problem
{
    public static ProblemHttpResult From(Failure failure, string? field = null, IReadOnlyDictionary<string, object?>? more = null)
    {
        int status = ProblemMap.StatusOf(failure.Code);
        Dictionary<string, object?> members = new() { ["code"] = failure.Code.Name, ["hint"] = failure.Hint };
        if (field is not null)
            members["field"] = field;
        foreach ((string name, object? value) in more ?? new Dictionary<string, object?>())
            members[name] = value;
        return TypedResults.Problem(failure.Message, statusCode: status, title: ReasonPhrases.GetReasonPhrase(status), extensions: members);
    }

    /// <summary>The answer to one request too many.</summary>
    public static ProblemHttpResult Busy(HttpResponse response)
    {
        response.Headers.RetryAfter = MeasuringTurns.RetryAfter.TotalSeconds.ToString("0", CultureInfo.InvariantCulture);
        return From(new(ServiceFailures.Busy, "too many photos are being measured", "wait a few seconds, then try again"));
    }
}
