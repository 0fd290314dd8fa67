using System.Globalization;
using MarkReader.Quantities;
using MarkReader.Service.Display;
using MarkReader.Service.Hosting;
using MarkReader.Service.Texts;
using MarkReader.Service.Uploads;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.WebUtilities;

namespace MarkReader.Service.Problems;

/// <summary>A refusal as problem details (RFC 9457): detail is what is wrong; the members code and hint are ours, and field where a field of the form is meant.</summary>
internal static class Problem
{
    public static ProblemHttpResult From(Failure failure, string? field = null, IReadOnlyDictionary<string, object?>? more = null, Figures? reader = null) =>
        With(ProblemMap.StatusOf(failure.Code), failure, field, more, reader);

    /// <summary>The refusal of what was sent, in the reader's unit.</summary>
    /// <param name="isForm">Whether it was a form that has the field.</param>
    public static ProblemHttpResult From(FieldFailure wrong, HttpContext context, bool isForm = true) =>
        wrong.Failure.Code == ServiceFailures.Busy ? Busy(context.Response) : From(wrong.Failure, isForm ? wrong.Field : null, reader: Reader.Of(context));

    /// <summary>The refusal of something that is kept all the same but cannot be used.</summary>
    public static ProblemHttpResult Unusable(Failure failure, string field, IReadOnlyDictionary<string, object?> more, Figures? reader) =>
        With(StatusCodes.Status422UnprocessableEntity, failure, field, more, reader);

    private static ProblemHttpResult With(int status, Failure failure, string? field, IReadOnlyDictionary<string, object?>? more, Figures? reader)
    {
        Dictionary<string, object?> members = new() { ["code"] = failure.Code.Name, ["hint"] = reader?.Remedy(failure) ?? failure.Hint };
        if (field is not null)
            members["field"] = field;
        foreach ((string name, object? value) in more ?? new Dictionary<string, object?>())
            members[name] = value;
        return TypedResults.Problem(reader?.What(failure) ?? failure.Message, statusCode: status, title: ReasonPhrases.GetReasonPhrase(status), extensions: members);
    }

    /// <summary>Several refusals of one form: the first is the problem, all are in errors.</summary>
    /// <param name="failures">At least one.</param>
    /// <param name="aimId">Number of the aim with which the refusal is kept, or null.</param>
    /// <param name="reader">The reader of a page, or null for sentences in mm.</param>
    public static ProblemHttpResult From(IReadOnlyList<FieldFailure> failures, long? aimId, Figures? reader)
    {
        Dictionary<string, object?> more = new() { ["errors"] = failures.Select(f => FormError.From(f, reader)).ToArray() };
        if (aimId is not null)
            more["aimId"] = aimId;
        return From(failures[0].Failure, failures[0].Field, more, reader);
    }

    /// <summary>The answer to one request too many.</summary>
    public static ProblemHttpResult Busy(HttpResponse response)
    {
        response.Headers.RetryAfter = MeasuringTurns.RetryAfter.TotalSeconds.ToString("0", CultureInfo.InvariantCulture);
        return From(TooManyWaiting("form").Failure);
    }

    /// <summary>The refusal of one request too many.</summary>
    public static FieldFailure TooManyWaiting(string field) =>
        new(field, new(ServiceFailures.Busy, ServiceTexts.Get("problem.tooManyPhotosBeingMeasured"), ServiceTexts.Get("problem.waitFewSecondsThenTry")));
}

/// <summary>One thing wrong with a form, as problem details have it.</summary>
internal sealed record FormError(string Field, string Code, string Detail, string Hint)
{
    public static FormError From(FieldFailure wrong, Figures? reader) =>
        new(wrong.Field, wrong.Failure.Code.Name, reader?.What(wrong.Failure) ?? wrong.Failure.Message, reader?.Remedy(wrong.Failure) ?? wrong.Failure.Hint);
}
