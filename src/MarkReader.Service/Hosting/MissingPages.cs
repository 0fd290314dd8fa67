using MarkReader.Quantities;
using MarkReader.Service.Problems;
using MarkReader.Service.Texts;
using MarkReader.Service.Uploads;
using Microsoft.AspNetCore.Diagnostics;

namespace MarkReader.Service.Hosting;

/// <summary>Gives answers that have a status and nothing else a body: a page for people, problem details for programs.</summary>
internal static class MissingPages
{
    public static void UseMissingPages(this IApplicationBuilder app)
    {
        app.UseWhen(IsForPeople, people => people.UseStatusCodePagesWithReExecute("/missing"));
        app.UseWhen(context => !IsForPeople(context), programs => programs.UseStatusCodePages(AnswerAsync));
    }

    internal static bool IsForPeople(HttpContext context) =>
        HttpMethods.IsGet(context.Request.Method)
        && !context.Request.Path.StartsWithSegments("/api")
        && context.Request.Headers.Accept.ToString().Contains("text/html", StringComparison.Ordinal);

    private static Task AnswerAsync(StatusCodeContext context)
    {
        int status = context.HttpContext.Response.StatusCode;
        Failure? failure = status switch
        {
            StatusCodes.Status400BadRequest => new(ServiceFailures.RequestUnreadable, ServiceTexts.Get("missingPages.valueInAddressOrIn"), ServiceTexts.Get("missingPages.seeOpenapiVJsonFor")),
            StatusCodes.Status404NotFound => new(ServiceFailures.NotFound, ServiceTexts.Get("missingPages.thereNothingAtThisAddress"), ServiceTexts.Get("missingPages.seeOpenapiVJsonFor2")),
            StatusCodes.Status413PayloadTooLarge => UploadForm.TooLarge(),
            StatusCodes.Status415UnsupportedMediaType => new(ServiceFailures.MediaTypeNotTaken, ServiceTexts.Get("missingPages.requestContentTypeNotTaken"), ServiceTexts.Get("missingPages.sendPhotosAsMultipartForm")),
            _ => null,
        };
        return failure is null ? Task.CompletedTask : Problem.From(failure).ExecuteAsync(context.HttpContext);
    }
}
