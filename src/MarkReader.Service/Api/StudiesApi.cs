using System.ComponentModel;
using MarkReader.Application.Storage;
using MarkReader.Application.Studies;
using MarkReader.Quantities;
using MarkReader.Service.Api.Answers;
using MarkReader.Service.Hosting;
using MarkReader.Service.Problems;
using MarkReader.Service.Texts;
using MarkReader.Service.Uploads;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;

namespace MarkReader.Service.Api;

/// <summary>Studies: planned, photos added, listed, deleted. <see cref="StudyResultsApi"/> gives out what they show.</summary>
internal static class StudiesApi
{
    public static void MapStudies(this IEndpointRouteBuilder app)
    {
        RouteGroupBuilder studies = app.MapGroup("/api/studies").WithTags("Studies");
        studies.MapGet("/", List).WithName("ListStudies").WithSummary("The studies that are kept, newest first.");
        studies.MapPost("/", PostAsync).WithName("BeginStudy").WithSummary("Begin a study of readings (kind marks) or of the scatter of pulses (kind pulses).")
            .Accepts<StudyToBegin>("application/json")
            .ProducesProblems(StatusCodes.Status400BadRequest, StatusCodes.Status409Conflict, StatusCodes.Status413PayloadTooLarge, StatusCodes.Status415UnsupportedMediaType, StatusCodes.Status422UnprocessableEntity);
        studies.MapGet("/{id:long}", Get).WithName("GetStudy").WithSummary("A study: what is missing, and its result as soon as there is one; its version is the ETag.").ProducesProblem(StatusCodes.Status404NotFound);
        studies.MapPut("/{id:long}", PutAsync).WithName("ChangeStudy").WithSummary("Change a study's plan. Its kind stays, and so do people of whom there are photos.")
            .Accepts<StudyToBegin>("application/json")
            .ProducesProblems(UsualProblems.ChangeByBody);
        studies.MapPost("/{id:long}/photos", PostPhotoAsync).WithName("AddStudyPhoto").WithSummary("Measure a photo and add its marks.")
            .WithDescription(
                "The photo itself is not kept. 200 when the same bytes are sent again: they count once. A photo that is not used (no card or too few marks in it) stays in the list all the same: 422, with its number.")
            .Accepts<StudyUpload>("multipart/form-data")
            .ProducesProblems(UsualProblems.Photo);
        studies.MapDelete("/{id:long}/photos/{number:int}", DeletePhoto).WithName("RemoveStudyPhoto").WithSummary("Remove a photo.")
            .ProducesProblems(UsualProblems.Change);
        studies.MapDelete("/{id:long}", Delete).WithName("DeleteStudy").WithSummary("Delete a study.")
            .ProducesProblems(UsualProblems.Change);
    }

    private static Results<Ok<StudyList>, ProblemHttpResult> List(
        StudyStore studies,
        [Description("Number of the study before which the page starts.")] long? before,
        [Description("Studies on the page, 1 to 100.")] int limit = 20) =>
        studies.List(before, limit).TryGet(out Page<StudyEntry>? page, out Failure? failure)
            ? TypedResults.Ok(new StudyList([.. page.Items.Select(StudyEntryAnswer.From)], page.Following("/api/studies", limit)))
            : Problem.From(failure);

    private static async Task<Results<Created<KeptStudyAnswer>, ProblemHttpResult>> PostAsync(
        HttpContext context,
        StudyStore studies,
        [FromHeader(Name = "Idempotency-Key"), Description(Preconditions.KeyDescription)] string? key)
    {
        RequestKey? request = null;
        if (!(await JsonBody.ReadAsync(context.Request, StudySetupText.MostBytes)).TryGet(out byte[]? bytes, out Failure? failure)
            || !StudySetupText.Read(bytes).TryGet(out StudySetup? setup, out failure)
            || (key is not null && !RequestKey.Of(key, bytes).TryGet(out request, out failure))
            || !studies.Begin(setup, request).TryGet(out KeptStudy? begun, out failure))
            return Problem.From(failure);
        Preconditions.SetTag(context, begun.Entry.Version);
        return TypedResults.Created(KeptStudyAnswer.Address(begun.Entry.Id), KeptStudyAnswer.From(begun));
    }

    private static Results<Ok<KeptStudyAnswer>, ProblemHttpResult> Get(HttpContext context, StudyStore studies, [Description(Describing.Study)] long id) =>
        Reply(context, studies.Find(id));

    private static async Task<Results<Ok<KeptStudyAnswer>, ProblemHttpResult>> PutAsync(
        HttpContext context,
        StudyStore studies,
        [Description(Describing.Study)] long id,
        [FromHeader(Name = "If-Match"), Description(Preconditions.Description)] string? ifMatch) =>
        Preconditions.Required(ifMatch).TryGet(out ExpectedVersion? expected, out Failure? failure)
        && (await JsonBody.ReadAsync(context.Request, StudySetupText.MostBytes)).TryGet(out byte[]? bytes, out failure)
        && StudySetupText.Read(bytes).TryGet(out StudySetup? setup, out failure)
            ? Reply(context, studies.Describe(id, setup, expected))
            : Problem.From(failure);

    private static async Task<Results<Created<KeptStudyAnswer>, Ok<KeptStudyAnswer>, ProblemHttpResult>> PostPhotoAsync(
        HttpContext context, StudyDesk desk, MeasuringTurns turns, [Description(Describing.Study)] long id)
    {
        if (!(await UploadForm.ReadAsync(context.Request)).TryGet(out UploadForm? form, out Failure? failure))
            return Problem.From(failure);
        if (form.File("photo") is not { } file)
            return Problem.From(new(ServiceFailures.FieldMissing, ServiceTexts.Get("photosApi.formHoldsNoFileNamed"), ServiceTexts.Get("photosApi.addPhotoFormAsPhoto")), "photo");
        using IDisposable? turn = await turns.TakeTurnAsync(context.RequestAborted);
        if (turn is null)
            return Problem.Busy(context.Response);
        if (!desk.Add(id, form.Text("person") ?? "", await UploadForm.BytesAsync(file, context.RequestAborted), file.FileName).TryGet(out StudyPhotoReceipt? receipt, out failure))
            return Problem.From(failure, "photo", reader: Reader.Of(context));
        KeptStudyAnswer answer = KeptStudyAnswer.From(receipt.Study);
        Preconditions.SetTag(context, answer.Version);
        if (receipt.Photo.Refusal is { } refusal)
            return Problem.Unusable(refusal, "photo", new Dictionary<string, object?> { ["number"] = receipt.Number }, Reader.Of(context));
        return receipt.IsNew ? TypedResults.Created(KeptStudyAnswer.Address(id), answer) : TypedResults.Ok(answer);
    }

    private static Results<Ok<KeptStudyAnswer>, ProblemHttpResult> DeletePhoto(
        HttpContext context,
        StudyStore studies,
        [Description(Describing.Study)] long id,
        [Description("The photo's number.")] int number,
        [FromHeader(Name = "If-Match"), Description(Preconditions.Description)] string? ifMatch) =>
        Preconditions.Required(ifMatch).TryGet(out ExpectedVersion? expected, out Failure? failure) ? Reply(context, studies.RemovePhoto(id, number, expected)) : Problem.From(failure);

    private static Results<NoContent, ProblemHttpResult> Delete(
        StudyStore studies,
        [Description(Describing.Study)] long id,
        [FromHeader(Name = "If-Match"), Description(Preconditions.Description)] string? ifMatch) =>
        Preconditions.Required(ifMatch).TryGet(out ExpectedVersion? expected, out Failure? failure) && studies.Remove(id, expected).TryGet(out _, out failure)
            ? TypedResults.NoContent()
            : Problem.From(failure);

    internal static Results<Ok<KeptStudyAnswer>, ProblemHttpResult> Reply(HttpContext context, Outcome<KeptStudy> found)
    {
        if (!found.TryGet(out KeptStudy? study, out Failure? failure))
            return Problem.From(failure);
        Preconditions.SetTag(context, study.Entry.Version);
        return TypedResults.Ok(KeptStudyAnswer.From(study));
    }
}
