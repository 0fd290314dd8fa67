using System.Globalization;
using System.Text.Json;
using MarkReader.Application.Advising;
using MarkReader.Application.Reports;
using MarkReader.Quantities;

namespace MarkReader.Application.Interim;

/// <summary>A record as JSON, to be kept beside the photos.</summary>
public static class InterimFile
{
    /// <summary>Largest file, bytes.</summary>
    public const int MostBytes = 4 << 20;

    private const int MostMarks = 100;

    private static readonly JsonDocumentOptions s_json = new() { MaxDepth = JsonText.MostDepth };

    public static string Write(InterimRecord record) => ReportJson.Write(new FileDocument(
        record.Program,
        record.Made.ToString("O", CultureInfo.InvariantCulture),
        [.. record.Photos.Select(p => new PhotoDocument(p.Name, p.Digest, p.Refusal, p.Why, [.. p.Marks.Select(m => new MarkDocument(m.Point.U, m.Point.V, MarkReport.Matrix(m.Covariance)))]))]));

    /// <summary>The record, when everything in it can be one.</summary>
    public static Outcome<InterimRecord> Read(ReadOnlyMemory<byte> bytes)
    {
        using JsonDocument? document = JsonText.Parse(bytes, s_json, out string unreadable);
        if (document is null)
            return Refusal(unreadable);
        FileDocument? file;
        try
        {
            file = document.Deserialize<FileDocument>(ReportJson.Options);
        }
        catch (JsonException)
        {
            return Refusal(InterimTexts.Get("record.fields"));
        }

        if (file is not { Program: { Length: > 0 and <= 100 } program, Photos: { Count: > 0 and <= InterimFolder.MostPhotos } photos }
            || !DateTimeOffset.TryParse(file.Made, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out DateTimeOffset made)
            || photos.Any(p => !IsSound(p)) || photos.DistinctBy(p => p.Name).Count() < photos.Count)
            return Refusal(InterimTexts.Get("record.fields"));
        return new InterimRecord(program, made, [.. photos.Select(p => new InterimPhoto(
            p.Name, p.Sha256, [.. p.Marks.Select(m => new MeasuredPoint(new(m.U, m.V), new(m.Covariance[0][0], m.Covariance[0][1], m.Covariance[1][1])))], p.Refusal, p.Why))]);
    }

    private static bool IsSound(PhotoDocument? p) => p is { Name.Length: > 0 and <= 255, Sha256.Length: 64, Marks.Count: <= MostMarks }
        && p.Marks.All(m => m is { Covariance: [[var uu, var uv], [_, var vv]] } && uu > 0 && vv > 0 && uv * uv < uu * vv && double.IsFinite(uu + vv + m.U + m.V));

    private static Failure Refusal(string what) => new(InterimFailures.RecordUnreadable, InterimTexts.Word("record.unreadable", what), InterimTexts.Get("record.unreadable.hint"));

    private sealed record FileDocument(string Program, string Made, IReadOnlyList<PhotoDocument> Photos);

    private sealed record PhotoDocument(string Name, string Sha256, string? Refusal, string? Why, IReadOnlyList<MarkDocument> Marks);

    private sealed record MarkDocument(double U, double V, double[][] Covariance);
}
