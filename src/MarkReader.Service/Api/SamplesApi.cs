using System.ComponentModel;
using MarkReader.Service.Problems;
using MarkReader.Service.Samples;
using MarkReader.Service.Texts;
using Microsoft.AspNetCore.Http.HttpResults;

namespace MarkReader.Service.Api;

/// <summary>Photos for trying the service without a laser.</summary>
internal static class SamplesApi
{
    public static void MapSamples(this IEndpointRouteBuilder app)
    {
        RouteGroupBuilder samples = app.MapGroup("/api/samples").WithTags("Samples");
        samples.MapGet("/", (SampleSet set) => new SampleList(set.Pairs)).WithName("ListSamples").WithSummary("The sample pairs with their path lengths.");
        samples.MapGet("/{file}", Get).WithName("GetSample").WithSummary("A sample photo.")
            .Produces(StatusCodes.Status200OK, contentType: "image/jpeg")
            .ProducesProblem(StatusCodes.Status404NotFound);
    }

    private static Results<PhysicalFileHttpResult, ProblemHttpResult> Get(SampleSet set, [Description("Name of the file, as the list gives it.")] string file) =>
        set.PathOf(file) is { } path
            ? TypedResults.PhysicalFile(path, "image/jpeg")
            : Problem.From(new(ServiceFailures.NotFound, ServiceTexts.Get("samplesApi.thereNoSampleThisName"), ServiceTexts.Get("samplesApi.seeApiSamples")));
}
