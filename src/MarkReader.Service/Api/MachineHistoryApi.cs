using System.ComponentModel;
using MarkReader.Application.History;
using MarkReader.Quantities;
using MarkReader.Service.Api.Answers;
using MarkReader.Service.Display;
using MarkReader.Service.Problems;
using MarkReader.Service.Texts;
using Microsoft.AspNetCore.Http.HttpResults;

namespace MarkReader.Service.Api;

/// <summary>Histories of machines.</summary>
internal static class MachineHistoryApi
{
    public static void MapMachineHistory(this IEndpointRouteBuilder app)
    {
        RouteGroupBuilder history = app.MapGroup("/api/machines/{id:long}/history").WithTags("Machines");
        history.MapGet("/", Get).WithName("GetMachineHistory").WithSummary("What a machine did over its visits: as found, as left, and whether it is steady, drifts or jumped.")
            .WithDescription("A change is from how a quantity was left at one visit to how it was found at the next. Steady, drifting, jumped, changed, unsteady and tooFew come from tests at stated levels; practice visits do not count, and the newest 200 visits are looked at.")
            .ProducesProblems(StatusCodes.Status400BadRequest, StatusCodes.Status404NotFound);
        history.MapGet("/{file}", GetChart).WithName("GetMachineHistoryChart").WithSummary("A quantity over the visits as a chart.")
            .Produces(StatusCodes.Status200OK, contentType: "image/svg+xml", additionalContentTypes: ["image/png"])
            .ProducesProblems(StatusCodes.Status400BadRequest, StatusCodes.Status404NotFound);
    }

    private static Results<Ok<HistoryAnswer>, ProblemHttpResult> Get(HistoryDesk desk, Figures figures, [Description(Describing.Machine)] long id) =>
        desk.Of(id).TryGet(out MachineHistory? history, out Failure? failure)
            ? TypedResults.Ok(HistoryAnswer.From(history, new(figures.Record), desk.Now))
            : Problem.From(failure);

    private static Results<FileContentHttpResult, ProblemHttpResult> GetChart(
        HistoryDesk desk,
        Figures figures,
        [Description(Describing.Machine)] long id,
        [Description("slope-1, slope-2, slope-3, spread or centring, and .svg or .png: slope-2.svg.")] string file)
    {
        if (!desk.Of(id).TryGet(out MachineHistory? history, out Failure? failure))
            return Problem.From(failure);
        if (PictureReplies.Name(file) is not { } name || history.Quantities.FirstOrDefault(q => q.Quantity.Name == name) is not { } quantity)
            return Problem.From(new(ServiceFailures.NotFound, ServiceTexts.Get("machineHistoryApi.machineHistoryHasNoChart"), ServiceTexts.Get("machineHistoryApi.chooseQuantityFromHistoryAnd")));
        return PictureReplies.Of(new HistoryWords(figures.Record).Chart(quantity), file);
    }
}
