using System.ComponentModel;
using System.Globalization;
using MarkReader.Application.Pictures;
using MarkReader.Application.VisitLog;
using MarkReader.Quantities;
using MarkReader.Service.Api.Answers;
using MarkReader.Service.Display;
using MarkReader.Service.Problems;
using MarkReader.Service.Texts;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.Net.Http.Headers;

namespace MarkReader.Service.Api;

/// <summary>The pictures of a visit.</summary>
internal static class VisitPicturesApi
{
    public static void MapVisitPictures(this IEndpointRouteBuilder app)
    {
        RouteGroupBuilder pictures = app.MapGroup("/api/visits/{id:long}/pictures").WithTags("Visits");
        pictures.MapGet("/", List).WithName("ListVisitPictures").WithSummary("The pictures of a visit, with all that they show in words; the visit's version is the ETag.")
            .WithDescription("Targets, the screw to turn, the bed, the frame, the aperture and the uncertainties as they stand now; those whose names begin with before- as they were found. A picture that has no data yet is left out.")
            .ProducesProblems(StatusCodes.Status400BadRequest, StatusCodes.Status404NotFound);
        pictures.MapGet("/{file}", Get).WithName("GetVisitPicture").WithSummary("A picture of a visit, in the unit and with the decimal sign that the browser's pages show; mm and a point without any.")
            .Produces(StatusCodes.Status200OK, contentType: "image/svg+xml", additionalContentTypes: ["image/png"])
            .Produces(StatusCodes.Status304NotModified)
            .ProducesProblems(StatusCodes.Status400BadRequest, StatusCodes.Status404NotFound);
    }

    private static Results<Ok<VisitPictureList>, ProblemHttpResult> List(HttpContext context, VisitStore visits, [Description(Describing.Visit)] long id)
    {
        if (!visits.Find(id).TryGet(out KeptVisit? visit, out Failure? failure) || !VisitGallery.Of(visit).TryGet(out VisitGallery? gallery, out failure))
            return Problem.From(failure);
        Preconditions.SetTag(context, visit.Entry.Version);
        return TypedResults.Ok(new VisitPictureList([.. gallery.All().Select(p => VisitPictureEntry.From(id, p))]));
    }

    private static Results<FileContentHttpResult, ProblemHttpResult> Get(
        VisitStore visits,
        Figures figures,
        [Description(Describing.Visit)] long id,
        [Description("The picture's name and .svg or .png: target-1.svg.")] string file)
    {
        if (!visits.Find(id).TryGet(out KeptVisit? visit, out Failure? failure) || !VisitGallery.Of(visit, PictureLook.Of(figures)).TryGet(out VisitGallery? gallery, out failure))
            return Problem.From(failure);
        if (PictureReplies.Name(file) is not { } name || gallery.Find(name) is not { } picture)
            return Problem.From(new(ServiceFailures.NotFound, ServiceTexts.Get("visitPicturesApi.visitHasNoPictureThis"), ServiceTexts.Get("visitPicturesApi.chooseOneFromListPictures")));
        EntityTagHeaderValue tag = new(string.Create(CultureInfo.InvariantCulture, $"\"{visit.Entry.Version}{(figures.Preferences.Inches ? "-in" : "")}{(figures.Preferences.Comma ? "-comma" : "")}\""));
        return PictureReplies.Of(picture.Drawing, file, tag);
    }
}

/// <summary>The pictures of a visit.</summary>
internal sealed record VisitPictureList(IReadOnlyList<VisitPictureEntry> Pictures);

/// <summary>A picture of a visit.</summary>
/// <param name="Name">Such as target-1.</param>
/// <param name="Description">What it shows, with all its numbers.</param>
/// <param name="Width">px at 96 dpi.</param>
/// <param name="Height">The same.</param>
/// <param name="Svg">Address of the drawing.</param>
/// <param name="Png">Address of the same as a PNG, three pixels to the px.</param>
internal sealed record VisitPictureEntry(string Name, string Description, double Width, double Height, string Svg, string Png)
{
    public static VisitPictureEntry From(long visit, VisitPicture picture)
    {
        string address = $"{VisitAnswer.Address(visit)}/pictures/{picture.Name}";
        return new(picture.Name, picture.Description, picture.Drawing.Width, picture.Drawing.Height, address + ".svg", address + ".png");
    }
}
