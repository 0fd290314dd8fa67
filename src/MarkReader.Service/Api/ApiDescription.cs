using Microsoft.AspNetCore.OpenApi;

namespace MarkReader.Service.Api;

/// <summary>The description of the interface at /openapi/v1.json.</summary>
internal static class ApiDescription
{
    public static void Configure(OpenApiOptions options) => options.AddDocumentTransformer((document, _, _) =>
    {
        document.Info.Title = "MarkReader";
        document.Info.Description = "Marks of a photo, the aim point of a leg, machines, visits to them, the cameras that take the photos, studies of readings and of pulses, and reference photos that every version of the program measures again. Lengths in mm, slopes in mrad, photo points in px. "
            + "Refusals are problem details (RFC 9457) with the members code and hint, and field where a field of a form is meant.";
        return Task.CompletedTask;
    });
}
