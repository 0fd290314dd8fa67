using System.ComponentModel;
using System.Text;
using System.Text.Json;
using MarkReader.Application.Machines;
using MarkReader.Application.Storage;
using MarkReader.Quantities;
using MarkReader.Service.Api.Answers;
using MarkReader.Service.Problems;
using MarkReader.Service.Texts;
using MarkReader.Service.Uploads;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;

namespace MarkReader.Service.Api;

/// <summary>Machines: kept as their documents, listed, given back, changed, deleted.</summary>
internal static class MachinesApi
{
    private static string Document => ServiceTexts.Get("machinesApi.bodyMachineDocumentAsStands");

    public static void MapMachines(this IEndpointRouteBuilder app)
    {
        RouteGroupBuilder machines = app.MapGroup("/api/machines").WithTags("Machines");
        machines.MapGet("/", List).WithName("ListMachines").WithSummary("The machines that are kept, newest first.");
        machines.MapGet("/presets", () => new PresetList([.. MachinePresets.All.Select(PresetAnswer.From)])).WithName("ListPresets").WithSummary("Machines to start from, by their size.");
        machines.MapPost("/", PostAsync).WithName("AddMachine").WithSummary("Keep a machine.").WithDescription(Document)
            .Accepts<JsonElement>("application/json")
            .ProducesProblems(StatusCodes.Status400BadRequest, StatusCodes.Status409Conflict, StatusCodes.Status413PayloadTooLarge, StatusCodes.Status415UnsupportedMediaType, StatusCodes.Status422UnprocessableEntity);
        machines.MapGet("/{id:long}", Get).WithName("GetMachine").WithSummary("A machine; its version is the ETag.").ProducesProblem(StatusCodes.Status404NotFound);
        machines.MapGet("/{id:long}/file", GetFile).WithName("GetMachineFile").WithSummary("A machine's document as it was given, to be sent to another service.")
            .Produces(StatusCodes.Status200OK, contentType: "application/json")
            .ProducesProblem(StatusCodes.Status404NotFound);
        machines.MapPut("/{id:long}", PutAsync).WithName("ChangeMachine").WithSummary("Put another document in a machine's place.")
            .WithDescription(Document + " 412 when the machine has changed since the version in If-Match.")
            .Accepts<JsonElement>("application/json")
            .ProducesProblems(StatusCodes.Status400BadRequest, StatusCodes.Status404NotFound, StatusCodes.Status412PreconditionFailed, StatusCodes.Status413PayloadTooLarge, StatusCodes.Status415UnsupportedMediaType, StatusCodes.Status428PreconditionRequired);
        machines.MapDelete("/{id:long}", Delete).WithName("DeleteMachine").WithSummary("Delete a machine.")
            .ProducesProblems(StatusCodes.Status404NotFound, StatusCodes.Status412PreconditionFailed, StatusCodes.Status428PreconditionRequired);
    }

    private static Results<Ok<MachineList>, ProblemHttpResult> List(
        MachineStore machines,
        [Description("Number of the machine before which the page starts.")] long? before,
        [Description("Machines on the page, 1 to 100.")] int limit = 20)
    {
        if (!machines.List(before, limit).TryGet(out Page<MachineEntry>? page, out Failure? failure))
            return Problem.From(failure);
        return TypedResults.Ok(new MachineList(page.Items, page.Following("/api/machines", limit)));
    }

    private static async Task<Results<Created<MachineAnswer>, ProblemHttpResult>> PostAsync(
        HttpContext context,
        MachineStore machines,
        [FromHeader(Name = "Idempotency-Key"), Description(Preconditions.KeyDescription)] string? key)
    {
        RequestKey? request = null;
        if (!(await ReadAsync(context)).TryGet(out MachineDocument? document, out Failure? failure)
            || (key is not null && !RequestKey.Of(key, Encoding.UTF8.GetBytes(document.Text)).TryGet(out request, out failure))
            || !machines.Add(document, request).TryGet(out KeptMachine? kept, out failure)
            || !machines.FindSame(document, kept.Entry.Id).TryGet(out SameMachine? same, out failure))
            return Problem.From(failure);
        Preconditions.SetTag(context, kept.Entry.Version);
        return TypedResults.Created(MachineAnswer.Address(kept.Entry.Id), MachineAnswer.From(kept, same.Entry));
    }

    private static Results<Ok<MachineAnswer>, ProblemHttpResult> Get(HttpContext context, MachineStore machines, [Description(Describing.Machine)] long id)
    {
        if (!machines.Find(id).TryGet(out KeptMachine? kept, out Failure? failure))
            return Problem.From(failure);
        Preconditions.SetTag(context, kept.Entry.Version);
        return TypedResults.Ok(MachineAnswer.From(kept));
    }

    private static Results<ContentHttpResult, ProblemHttpResult> GetFile(HttpContext context, MachineStore machines, [Description(Describing.Machine)] long id)
    {
        if (!machines.Find(id).TryGet(out KeptMachine? kept, out Failure? failure))
            return Problem.From(failure);
        Preconditions.SetTag(context, kept.Entry.Version);
        return TypedResults.Content(kept.Text, "application/json; charset=utf-8");
    }

    private static async Task<Results<Ok<MachineAnswer>, ProblemHttpResult>> PutAsync(
        HttpContext context,
        MachineStore machines,
        [Description(Describing.Machine)] long id,
        [FromHeader(Name = "If-Match"), Description(Preconditions.Description)] string? ifMatch)
    {
        if (!Preconditions.Required(ifMatch).TryGet(out ExpectedVersion? expected, out Failure? failure)
            || !(await ReadAsync(context)).TryGet(out MachineDocument? document, out failure)
            || !machines.Replace(id, document, expected).TryGet(out KeptMachine? kept, out failure))
            return Problem.From(failure);
        Preconditions.SetTag(context, kept.Entry.Version);
        return TypedResults.Ok(MachineAnswer.From(kept));
    }

    private static Results<NoContent, ProblemHttpResult> Delete(
        MachineStore machines,
        [Description(Describing.Machine)] long id,
        [FromHeader(Name = "If-Match"), Description(Preconditions.Description)] string? ifMatch) =>
        Preconditions.Required(ifMatch).TryGet(out ExpectedVersion? expected, out Failure? failure) && machines.Remove(id, expected).TryGet(out _, out failure)
            ? TypedResults.NoContent()
            : Problem.From(failure);

    private static async Task<Outcome<MachineDocument>> ReadAsync(HttpContext context) =>
        (await JsonBody.ReadAsync(context.Request, MachineFile.MostBytes)).TryGet(out byte[]? bytes, out Failure? failure) ? MachineFile.Read(bytes) : failure;
}
