using System.ComponentModel;
using MarkReader.Application.Budgets;
using MarkReader.Application.Records;
using MarkReader.Application.Reports;
using MarkReader.Application.Storage;
using MarkReader.Drawing.Cards;
using MarkReader.Drawing.Documents;
using MarkReader.Quantities;
using MarkReader.Service.Api.Answers;
using MarkReader.Service.Display;
using MarkReader.Service.Problems;
using MarkReader.Service.Texts;
using MarkReader.Service.Uploads;
using Microsoft.AspNetCore.Http.HttpResults;

namespace MarkReader.Service.Api;

/// <summary>Aims: worked out from photos, listed, given back, deleted.</summary>
internal static class AimsApi
{
    public static void MapAims(this IEndpointRouteBuilder app)
    {
        RouteGroupBuilder aims = app.MapGroup("/api/aims").WithTags("Aims");
        aims.MapPost("/", PostAsync).WithName("FindAim")
            .WithSummary("Work out the aim point of a leg.")
            .WithDescription("The same photos and numbers are one result: 201 the first time, 200 after that. When the photos cannot be measured, the refusal is kept with them: 422, with its aimId.")
            .Accepts<AimUpload>("multipart/form-data")
            .ProducesProblems(StatusCodes.Status400BadRequest, StatusCodes.Status404NotFound, StatusCodes.Status413PayloadTooLarge, StatusCodes.Status415UnsupportedMediaType, StatusCodes.Status422UnprocessableEntity, StatusCodes.Status503ServiceUnavailable);
        aims.MapGet("/", List).WithName("ListAims").WithSummary("The aims that are kept, newest first.");
        aims.MapGet("/{id:long}", Get).WithName("GetAim").WithSummary("An aim.").ProducesProblem(StatusCodes.Status404NotFound);
        aims.MapGet("/{id:long}/overlay.svg", GetOverlay).WithName("GetOverlay")
            .WithSummary("The drawing of an aim, to be laid over the far photo.")
            .Produces(StatusCodes.Status200OK, contentType: "image/svg+xml")
            .ProducesProblem(StatusCodes.Status404NotFound);
        aims.MapGet("/{id:long}/budget.pdf", GetBudget).WithName("GetBudget")
            .WithSummary("What the uncertainty of an aim comes from and what would halve it, on a page.")
            .Produces(StatusCodes.Status200OK, contentType: "application/pdf")
            .ProducesProblems(StatusCodes.Status400BadRequest, StatusCodes.Status404NotFound);
        aims.MapDelete("/{id:long}", Delete).WithName("DeleteAim").WithSummary("Delete an aim, and those of its photos to which no other aim refers.")
            .ProducesProblem(StatusCodes.Status404NotFound);
    }

    private static async Task<Results<Created<AimAnswer>, Ok<AimAnswer>, ProblemHttpResult>> PostAsync(HttpContext context, AimDispatch dispatch)
    {
        if (!(await UploadForm.ReadAsync(context.Request)).TryGet(out UploadForm? form, out Failure? failure))
            return Problem.From(failure);
        if (await dispatch.RunAsync(form, context.RequestAborted) is not { } done)
            return Problem.Busy(context.Response);
        if (done.Failures.Count > 0)
            return Problem.From(done.Failures, done.Receipt?.Kept.Id, Reader.Of(context));
        KeptAim kept = done.Receipt!.Kept;
        AimAnswer answer = AimAnswer.From(kept);
        return done.Receipt.IsNew ? TypedResults.Created(AimAnswer.Address(kept.Id), answer) : TypedResults.Ok(answer);
    }

    private static Results<Ok<AimList>, ProblemHttpResult> List(
        AimStore aims,
        [Description("Number of the aim before which the page starts.")] long? before,
        [Description("Aims on the page, 1 to 100.")] int limit = 20)
    {
        if (!aims.List(before, limit).TryGet(out Page<KeptAim>? page, out Failure? failure))
            return Problem.From(failure);
        return TypedResults.Ok(new AimList([.. page.Items.Select(AimAnswer.From)], page.Following("/api/aims", limit)));
    }

    private static Results<Ok<AimAnswer>, ProblemHttpResult> Get(AimStore aims, [Description("The aim's number.")] long id) =>
        aims.Find(id).TryGet(out KeptAim? kept, out Failure? failure) ? TypedResults.Ok(AimAnswer.From(kept)) : Problem.From(failure);

    private static Results<ContentHttpResult, ProblemHttpResult> GetOverlay(
        AimStore aims,
        [Description("The aim's number.")] long id,
        [Description("photo: drawn for the whole photo (unless said otherwise); crop: for the part about the card's free zone.")] string? view)
    {
        if (!aims.Find(id).TryGet(out KeptAim? kept, out Failure? failure))
            return Problem.From(failure);
        if (view is not (null or "photo" or "crop"))
            return Problem.From(new(ServiceFailures.FieldInvalid, ServiceTexts.Get("aimsApi.thereNoSuchView"), ServiceTexts.Get("aimsApi.askForPhotoOrCrop")), "view");
        return kept.Aim.Overlay is { } overlay
            ? TypedResults.Content(view == "crop" ? overlay.Crop : overlay.Photo, "image/svg+xml; charset=utf-8")
            : Problem.From(new(ServiceFailures.NotFound, ServiceTexts.Get("aimsApi.thisAimWasRefusedAnd"), ServiceTexts.Get("aimsApi.seeAimItselfForReason")));
    }

    private static Results<FileContentHttpResult, ProblemHttpResult> GetBudget(
        HttpContext context,
        AimStore aims,
        [Description("The aim's number.")] long id,
        [Description("mm or in; without it as the browser's pages show lengths.")] string? unit,
        [Description("point or comma; without it as the browser's pages show numbers.")] string? @decimal,
        [Description("a4 or letter; a4 without it.")] string? paper)
    {
        if (!Preferences.Read(context.Request).FormatOf(unit, @decimal, TimeZoneInfo.Utc).TryGet(out RecordFormat? format, out Failure? failure)
            || !Paper.Find(paper ?? Paper.A4.Name).TryGet(out Paper? page, out failure)
            || !aims.Find(id).TryGet(out KeptAim? kept, out failure))
            return Problem.From(failure);
        if (KeptReports.Read<AimReport>(kept.Aim.Answer) is not { } report
            || BudgetDocument.Of(new(report, AimToExplain.Kept(id), kept.FoundAt, kept.Aim.ProgramVersion), format) is not { } document)
            return Problem.From(new(ServiceFailures.NotFound, ServiceTexts.Get("aimsApi.thisAimHasNoBudget"), ServiceTexts.Get("aimsApi.findItAnewFromItsPhotos")));
        context.Response.Headers.ContentDisposition = $"inline; filename=\"markreader-uncertainty-{id}.pdf\"";
        return TypedResults.Bytes(PdfDocument.Write(document, page), "application/pdf");
    }

    private static Results<NoContent, ProblemHttpResult> Delete(AimStore aims, [Description("The aim's number.")] long id) =>
        aims.Delete(id).TryGet(out _, out Failure? failure) ? TypedResults.NoContent() : Problem.From(failure);
}
