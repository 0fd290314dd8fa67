using System.ComponentModel;
using MarkReader.Cards;
using MarkReader.Drawing.Cards;
using MarkReader.Quantities;
using MarkReader.Service.Problems;
using MarkReader.Service.Texts;
using Microsoft.AspNetCore.Http.HttpResults;

namespace MarkReader.Service.Api;

/// <summary>The cards to print.</summary>
internal static class CardsApi
{
    public static void MapCards(this IEndpointRouteBuilder app)
    {
        RouteGroupBuilder cards = app.MapGroup("/api/cards").WithTags("Cards");
        cards.MapGet("/", List).WithName("ListCards").WithSummary("The kinds of card.");
        cards.MapGet("/{file}", Get).WithName("GetCard").WithSummary("A card to print, at exact size.")
            .Produces(StatusCodes.Status200OK, contentType: "application/pdf", additionalContentTypes: ["image/svg+xml", "image/png"])
            .ProducesProblems(StatusCodes.Status400BadRequest, StatusCodes.Status404NotFound);
    }

    private static CardList List() => new([.. CardKinds.All.Select(kind => new CardEntry(kind.Name, kind.Purpose, kind.OuterSide, kind.ZoneSide))]);

    private static Results<FileContentHttpResult, ProblemHttpResult> Get(
        [Description("The kind's name and .pdf, .svg or .png: plate.pdf. PDF is a page with the card, the others are the card alone.")] string file,
        [Description("The page of a PDF: a4 (unless said otherwise) or letter.")] string? paper)
    {
        if (CardKinds.Find(Path.GetFileNameWithoutExtension(file)) is not { } kind)
        {
            string kinds = string.Join(" or ", CardKinds.All.Select(known => known.Name));
            return Problem.From(new(ServiceFailures.NotFound, ServiceTexts.Get("cardsApi.thereNoCardThisKind"), ServiceTexts.Word("cardsApi.askFor", kinds)));
        }
        if (!CardFormat.OfFile(file).TryGet(out CardFormat? format, out Failure? failure)
            || !Paper.Find(paper ?? Paper.A4.Name).TryGet(out Paper? page, out failure))
            return Problem.From(failure);
        // No file name, so that the browser shows it; the page's own links name the file.
        return TypedResults.File(CardSheet.Write(kind, format, page), format.MediaType);
    }
}

/// <summary>The kinds of card that can be printed.</summary>
internal sealed record CardList(IReadOnlyList<CardEntry> Cards);

/// <summary>A kind of card.</summary>
/// <param name="Kind">Its name.</param>
/// <param name="Purpose">What it is taped to.</param>
/// <param name="OuterSide">Side along which it is cut, mm.</param>
/// <param name="ZoneSide">Side of its free zone, mm.</param>
internal sealed record CardEntry(string Kind, string Purpose, double OuterSide, double ZoneSide);
