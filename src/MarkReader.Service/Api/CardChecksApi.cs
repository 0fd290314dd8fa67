using System.ComponentModel;
using System.Globalization;
using MarkReader.Application.CardChecks;
using MarkReader.Application.Storage;
using MarkReader.Quantities;
using MarkReader.Service.Api.Answers;
using MarkReader.Service.Display;
using MarkReader.Service.Problems;
using MarkReader.Service.Texts;
using MarkReader.Service.Uploads;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Net.Http.Headers;

namespace MarkReader.Service.Api;

/// <summary>Checks of printed cards: photos from several sides in, what the card does to marks out.</summary>
internal static class CardChecksApi
{
    public static void MapCardChecks(this IEndpointRouteBuilder app)
    {
        RouteGroupBuilder checks = app.MapGroup("/api/card-checks").WithTags("Card checks");
        checks.MapGet("/", List).WithName("ListCardChecks").WithSummary("The checks that are kept, newest first.");
        checks.MapPost("/", PostAsync).WithName("CheckCard").WithSummary("Check a printed card by photos from several sides.")
            .WithDescription(
                "At least three photos of one card by one camera that is kept: from straight above and from all sides, tilted by about 30 degrees. The photos are not kept. Photos do not tell the size of a print; rulerU and rulerV do. "
                + "422 when the photos cannot be used, do not fit the camera's profile or come from one side only.")
            .Accepts<CardCheckUpload>("multipart/form-data")
            .ProducesProblems(UsualProblems.Photo);
        checks.MapGet("/{id:long}", Get).WithName("GetCardCheck").WithSummary("A check of a card.").ProducesProblem(StatusCodes.Status404NotFound);
        checks.MapGet("/{id:long}/{file}", GetPicture).WithName("GetCardCheckPicture").WithSummary("The card's zone with the errors of marks in it, in the unit that the browser's pages show; mm without any.")
            .Produces(StatusCodes.Status200OK, contentType: "image/svg+xml", additionalContentTypes: ["image/png"])
            .Produces(StatusCodes.Status304NotModified)
            .ProducesProblem(StatusCodes.Status404NotFound);
        checks.MapDelete("/{id:long}", Delete).WithName("DeleteCardCheck").WithSummary("Delete a check. A check never changes, so that no version is asked for.").ProducesProblem(StatusCodes.Status404NotFound);
    }

    private static Results<Ok<CardCheckList>, ProblemHttpResult> List(
        CardCheckStore checks,
        [Description("Number of the check before which the page starts.")] long? before,
        [Description("Checks on the page, 1 to 100.")] int limit = 20) =>
        checks.List(before, limit).TryGet(out Page<KeptCardCheck>? page, out Failure? failure)
            ? TypedResults.Ok(new CardCheckList([.. page.Items.Select(CardCheckEntry.From)], page.Following("/api/card-checks", limit)))
            : Problem.From(failure);

    private static async Task<Results<Created<CardCheckAnswer>, ProblemHttpResult>> PostAsync(
        HttpContext context,
        CardCheckDispatch dispatch,
        [FromHeader(Name = "Idempotency-Key"), Description(Preconditions.KeyDescription)] string? key)
    {
        if (!(await UploadForm.ReadAsync(context.Request)).TryGet(out UploadForm? form, out Failure? failure))
            return Problem.From(failure);
        (KeptCardCheck? check, FieldFailure? wrong) = await dispatch.SendAsync(form, form.Files(FormPhotos.Chosen), key, context.RequestAborted);
        return check is not null ? TypedResults.Created(CardCheckAnswer.Address(check.Id), CardCheckAnswer.From(check)) : Problem.From(wrong!, context);
    }

    private static Results<Ok<CardCheckAnswer>, ProblemHttpResult> Get(CardCheckStore checks, [Description(Describing.CardCheck)] long id) =>
        checks.Find(id).TryGet(out KeptCardCheck? check, out Failure? failure) ? TypedResults.Ok(CardCheckAnswer.From(check)) : Problem.From(failure);

    private static Results<FileContentHttpResult, ProblemHttpResult> GetPicture(
        CardCheckStore checks, Figures figures, [Description(Describing.CardCheck)] long id, [Description("picture.svg or picture.png.")] string file)
    {
        if (!checks.Find(id).TryGet(out KeptCardCheck? check, out Failure? failure))
            return Problem.From(failure);
        if (PictureReplies.Name(file) != "picture")
            return Problem.From(new(ServiceFailures.NotFound, ServiceTexts.Get("cardCheck.noPicture"), ServiceTexts.Get("cardCheck.namePicture")));
        EntityTagHeaderValue tag = new(string.Create(CultureInfo.InvariantCulture, $"\"{id}{(figures.Preferences.Inches ? "-in" : "")}{(figures.Preferences.Comma ? "-comma" : "")}\""));
        return PictureReplies.Of(CardCheckPicture.Of(check.Report, PictureLook.Of(figures).Style), file, tag);
    }

    private static Results<NoContent, ProblemHttpResult> Delete(CardCheckStore checks, [Description(Describing.CardCheck)] long id) =>
        checks.Remove(id).TryGet(out _, out Failure? failure) ? TypedResults.NoContent() : Problem.From(failure);
}
