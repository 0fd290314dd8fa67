using System.ComponentModel;
using MarkReader.Application.Machines;
using MarkReader.Application.Records;
using MarkReader.Application.Storage;
using MarkReader.Application.Studies;
using MarkReader.Drawing.Cards;
using MarkReader.Drawing.Documents;
using MarkReader.Quantities;
using MarkReader.Service.Api.Answers;
using MarkReader.Service.Display;
using MarkReader.Service.Problems;
using MarkReader.Service.Texts;
using MarkReader.Service.Uploads;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;

namespace MarkReader.Service.Api;

/// <summary>What stands beside a study's photos: a table of readings in, pictures and the document out, and the scatter into a machine.</summary>
internal static class StudyResultsApi
{
    public static void MapStudyResults(this IEndpointRouteBuilder app)
    {
        RouteGroupBuilder study = app.MapGroup("/api/studies/{id:long}").WithTags("Studies");
        study.MapPut("/readings", PutReadingsAsync).WithName("PutStudyReadings").WithSummary("Give a table of readings in place of photos.")
            .WithDescription("CSV whose first line names the columns: part,operator,repeat,u,v for marks, u,v for pulses; perhaps uncertainty; mm. An operator is one of the plan's people; capitals and blanks do not matter. A table that cannot be evaluated is not kept.")
            .Accepts<string>("text/csv", "text/plain")
            .ProducesProblems(UsualProblems.ChangeByBody);
        study.MapDelete("/readings", DeleteReadings).WithName("DeleteStudyReadings").WithSummary("Take the table of readings away.")
            .ProducesProblems(UsualProblems.Change);
        study.MapGet("/report.pdf", GetReport).WithName("GetStudyReport").WithSummary("The result on paper.")
            .Produces(StatusCodes.Status200OK, contentType: "application/pdf")
            .ProducesProblems(StatusCodes.Status400BadRequest, StatusCodes.Status404NotFound, StatusCodes.Status422UnprocessableEntity);
        study.MapGet("/pictures/{file}", GetPicture).WithName("GetStudyPicture").WithSummary("A picture of the result: bars-u, bars-v and cloud of marks; bars and cloud of pulses; as .svg or .png.")
            .Produces(StatusCodes.Status200OK, contentType: "image/svg+xml")
            .ProducesProblem(StatusCodes.Status404NotFound);
        study.MapPut("/machine", PutMachineAsync).WithName("EnterStudyScatter").WithSummary("Enter the scatter that a study of pulses found in a machine's document, as its pulseScatter.")
            .WithDescription("Visits that are begun later reckon with it. If-Match has the machine's ETag, and so has the answer.")
            .Accepts<MachineToEnter>("application/json")
            .ProducesProblems(StatusCodes.Status400BadRequest, StatusCodes.Status404NotFound, StatusCodes.Status409Conflict, StatusCodes.Status412PreconditionFailed, StatusCodes.Status413PayloadTooLarge, StatusCodes.Status415UnsupportedMediaType, StatusCodes.Status422UnprocessableEntity, StatusCodes.Status428PreconditionRequired);
    }

    private static async Task<Results<Ok<KeptStudyAnswer>, ProblemHttpResult>> PutReadingsAsync(
        HttpContext context,
        StudyDesk desk,
        [Description(Describing.Study)] long id,
        [Description("Whether rows with the same operator and repeat were read in one photo.")] bool? perPhoto,
        [FromHeader(Name = "If-Match"), Description(Preconditions.Description)] string? ifMatch) =>
        Preconditions.Required(ifMatch).TryGet(out ExpectedVersion? expected, out Failure? failure)
        && (await TextBody.ReadAsync(context.Request, StudyStore.MostReadings)).TryGet(out byte[]? bytes, out failure)
            ? StudiesApi.Reply(context, desk.Put(id, bytes, perPhoto ?? false, expected))
            : Problem.From(failure);

    private static Results<Ok<KeptStudyAnswer>, ProblemHttpResult> DeleteReadings(
        HttpContext context,
        StudyStore studies,
        [Description(Describing.Study)] long id,
        [FromHeader(Name = "If-Match"), Description(Preconditions.Description)] string? ifMatch) =>
        Preconditions.Required(ifMatch).TryGet(out ExpectedVersion? expected, out Failure? failure) ? StudiesApi.Reply(context, studies.Put(id, null, expected)) : Problem.From(failure);

    private static Results<FileContentHttpResult, ProblemHttpResult> GetReport(
        HttpContext context,
        StudyStore studies,
        [Description(Describing.Study)] long id,
        [Description("mm or in; without it as the browser's pages show lengths.")] string? unit,
        [Description("point or comma; without it as the browser's pages show numbers.")] string? @decimal,
        [Description("a4 or letter; a4 without it.")] string? paper)
    {
        if (!Preferences.Read(context.Request).FormatOf(unit, @decimal, TimeZoneInfo.Utc).TryGet(out RecordFormat? format, out Failure? failure)
            || !Paper.Find(paper ?? Paper.A4.Name).TryGet(out Paper? page, out failure)
            || !studies.Find(id).TryGet(out KeptStudy? study, out failure))
            return Problem.From(failure);
        StudyStanding standing = StudyStanding.Of(study);
        (string name, DateTimeOffset at) = (study.Setup.Name, study.Entry.ChangedAt);
        SheetDocument? document = standing.Marks is { } marks ? StudyDocument.Of(marks, at, format, name) : standing.Scatter is { } scatter ? ScatterDocument.Of(scatter, at, format, name) : null;
        if (document is null)
            return Problem.From(standing.NotYet!);
        context.Response.Headers.ContentDisposition = $"inline; filename=\"markreader-study-{id}.pdf\"";
        return TypedResults.Bytes(PdfDocument.Write(document, page), "application/pdf");
    }

    private static Results<FileContentHttpResult, ProblemHttpResult> GetPicture(
        StudyStore studies, Figures figures, [Description(Describing.Study)] long id, [Description("The picture's name and .svg or .png.")] string file)
    {
        if (!studies.Find(id).TryGet(out KeptStudy? study, out Failure? failure))
            return Problem.From(failure);
        StudyStanding standing = StudyStanding.Of(study);
        IReadOnlyList<StudyPicture> all = standing.Marks is { } marks ? StudyPictures.Of(marks, figures.Record) : standing.Scatter is { } scatter ? StudyPictures.Of(scatter, figures.Record) : [];
        return PictureReplies.Name(file) is { } name && all.FirstOrDefault(p => p.Name == name) is { } picture
            ? PictureReplies.Of(picture.Drawing, file)
            : Problem.From(new(ServiceFailures.NotFound, ServiceTexts.Get("studyResultsApi.noSuchPicture"), ServiceTexts.Get("studyResultsApi.seeTheStudy")));
    }

    private static async Task<Results<Ok<MachineAnswer>, ProblemHttpResult>> PutMachineAsync(
        HttpContext context,
        ScatterEntry entry,
        [Description(Describing.Study)] long id,
        [FromHeader(Name = "If-Match"), Description(Preconditions.Description)] string? ifMatch)
    {
        if (!Preconditions.Required(ifMatch).TryGet(out ExpectedVersion? expected, out Failure? failure)
            || !(await JsonBody.ReadAsync(context.Request, StudySetupText.MostBytes)).TryGet(out byte[]? bytes, out failure)
            || !StudySetupText.ReadMachine(bytes).TryGet(out MachineChoice? choice, out failure)
            || !entry.Enter(id, choice.Id, expected).TryGet(out KeptMachine? machine, out failure))
            return Problem.From(failure);
        Preconditions.SetTag(context, machine.Entry.Version);
        return TypedResults.Ok(MachineAnswer.From(machine));
    }
}
