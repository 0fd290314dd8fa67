using System.ComponentModel;
using System.Globalization;
using MarkReader.Application.Records;
using MarkReader.Application.Storage;
using MarkReader.Application.VisitLog;
using MarkReader.Application.VisitLog.Bundles;
using MarkReader.Drawing.Cards;
using MarkReader.Quantities;
using MarkReader.Service.Api.Answers;
using MarkReader.Service.Display;
using MarkReader.Service.Hosting;
using MarkReader.Service.Problems;
using MarkReader.Service.Uploads;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;

namespace MarkReader.Service.Api;

/// <summary>Records of visits, and whole visits as one file.</summary>
internal static class VisitRecordsApi
{
    private const string ZipType = "application/zip";

    public static void MapVisitRecords(this IEndpointRouteBuilder app)
    {
        RouteGroupBuilder visits = app.MapGroup("/api/visits").WithTags("Visits");
        foreach (RecordFile kind in (RecordFile[])[RecordFile.Pdf, RecordFile.Html, RecordFile.Csv, RecordFile.Json])
        {
            visits.MapGet("/{id:long}/record" + kind.Extension, (
                HttpContext context,
                RecordDesk desk,
                MeasuringTurns turns,
                [Description(Describing.Visit)] long id,
                [Description("mm or in; without it as the browser's pages show lengths. CSV and JSON are always in mm.")] string? unit,
                [Description("point or comma; without it as the browser's pages show numbers. CSV and JSON always have a point.")] string? @decimal,
                [Description("a4 or letter; a4 without it.")] string? paper) => GetAsync(context, desk, turns, id, kind, unit, @decimal, paper))
                .WithName("GetRecord" + kind.Extension[1..].ToUpperInvariant()).WithSummary($"The record of a visit as {kind.Extension[1..].ToUpperInvariant()}.")
                .Produces(StatusCodes.Status200OK, contentType: kind.MediaType.Split(';')[0])
                .ProducesProblems(StatusCodes.Status400BadRequest, StatusCodes.Status404NotFound, StatusCodes.Status503ServiceUnavailable);
        }

        visits.MapGet("/{id:long}/bundle", GetBundle).WithName("GetVisitBundle").WithSummary("A whole visit with its photos as one ZIP file, which another installation can read.")
            .Produces(StatusCodes.Status200OK, contentType: ZipType)
            .ProducesProblems(StatusCodes.Status400BadRequest, StatusCodes.Status404NotFound, StatusCodes.Status410Gone);
        visits.MapPost("/bundles", PostBundleAsync).WithName("SendVisitBundle").WithSummary("Take in a whole visit from another installation.")
            .WithDescription("The visit keeps its own times. 201 when it is new; 200 with the visit that is here when it is here already, at this or a later version.")
            .WithMetadata(new RequestSizeLimitAttribute(BundleLimits.MostBytes))
            .Accepts<IFormFile>(ZipType)
            .ProducesProblems(StatusCodes.Status400BadRequest, StatusCodes.Status409Conflict, StatusCodes.Status413PayloadTooLarge, StatusCodes.Status415UnsupportedMediaType, StatusCodes.Status503ServiceUnavailable);
    }

    private static async Task<Results<FileContentHttpResult, ProblemHttpResult>> GetAsync(
        HttpContext context, RecordDesk desk, MeasuringTurns turns, long id, RecordFile kind, string? unit, string? separator, string? paper)
    {
        if (!Preferences.Read(context.Request).FormatOf(unit, separator, TimeZoneInfo.Local).TryGet(out RecordFormat? format, out Failure? failure)
            || !Paper.Find(paper ?? Paper.A4.Name).TryGet(out Paper? page, out failure))
            return Problem.From(failure);
        // Photos are decoded for it, as for a measurement.
        using IDisposable? turn = await turns.TakeTurnAsync(context.RequestAborted);
        if (turn is null)
            return Problem.Busy(context.Response);
        if (!desk.Write(id, kind, format, page).TryGet(out WrittenRecord? written, out failure))
            return Problem.From(failure);
        if (kind == RecordFile.Html)
            SecurityHeaders.Use(context, RecordHtml.Policy);
        context.Response.Headers.ContentDisposition = Named(written.Name, kind == RecordFile.Pdf || kind == RecordFile.Html ? "inline" : "attachment");
        return TypedResults.Bytes(written.Bytes, kind.MediaType);
    }

    private static Results<FileStreamHttpResult, ProblemHttpResult> GetBundle(HttpContext context, BundleDesk desk, DataFolder folder, [Description(Describing.Visit)] long id)
    {
        FileStream file = TemporaryFile.Create(folder);
        if (!desk.Write(id, file).TryGet(out KeptVisit? visit, out Failure? failure))
        {
            file.Dispose();
            return Problem.From(failure);
        }

        file.Position = 0;
        context.Response.Headers.ContentDisposition = Named(RecordDesk.Name(visit, ".zip"), "attachment");
        return TypedResults.Stream(file, ZipType);
    }

    private static async Task<Results<Created<VisitAnswer>, Ok<VisitAnswer>, ProblemHttpResult>> PostBundleAsync(HttpContext context, BundleDesk desk, MeasuringTurns turns, DataFolder folder)
    {
        await using FileStream file = TemporaryFile.Create(folder);
        if (await TemporaryFile.FillAsync(file, context.Request, ZipType) is { } unreadable)
            return Problem.From(unreadable);
        using IDisposable? turn = await turns.TakeTurnAsync(context.RequestAborted);
        if (turn is null)
            return Problem.Busy(context.Response);
        if (!VisitBundle.Open(file).TryGet(out VisitBundle? bundle, out Failure? failure))
            return Problem.From(failure);
        using (bundle)
        {
            if (!desk.Import(bundle).TryGet(out BundleReceipt? receipt, out failure))
                return Problem.From(failure);
            Preconditions.SetTag(context, receipt.Visit.Entry.Version);
            VisitAnswer answer = VisitAnswer.From(receipt.Visit);
            return receipt.IsNew ? TypedResults.Created(VisitAnswer.Address(receipt.Visit.Entry.Id), answer) : TypedResults.Ok(answer);
        }
    }

    // Digits, letters and hyphens only: nothing to be quoted.
    private static string Named(string name, string how) => string.Create(CultureInfo.InvariantCulture, $"{how}; filename=\"{name}\"");
}
