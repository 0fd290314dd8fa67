using System.Text.Json;
using MarkReader.Application.Reports;
using MarkReader.Application.Storage;

namespace MarkReader.Application.Records;

/// <summary>Where a record finds its photos.</summary>
public interface IRecordPhotos
{
    /// <summary>What was measured in a photo; null when that is not known.</summary>
    MeasureReport? Measured(string id);

    /// <summary>The photo's bytes; null when they cannot be had.</summary>
    ReadOnlyMemory<byte>? Bytes(string id);
}

/// <summary>A visit without photos.</summary>
public sealed class NoRecordPhotos : IRecordPhotos
{
    public MeasureReport? Measured(string id) => null;

    public ReadOnlyMemory<byte>? Bytes(string id) => null;
}

/// <summary>The photos that the service keeps.</summary>
public sealed class KeptRecordPhotos(PhotoStore photos) : IRecordPhotos
{
    public MeasureReport? Measured(string id) =>
        photos.FindMeasurement(id).TryGet(out KeptMeasurement? measurement, out _) && measurement.Answer is KeptAnswer.Report report ? ReadReport(report.Json) : null;

    public ReadOnlyMemory<byte>? Bytes(string id) => photos.Read(id).TryGet(out Original? original, out _) ? original.Bytes : null;

    /// <summary>Null when it is none.</summary>
    internal static MeasureReport? ReadReport(string json)
    {
        try
        {
            return JsonSerializer.Deserialize<MeasureReport>(json, ReportJson.Options) is { Marks: not null } report && report.Marks.All(m => m is not null) ? report : null;
        }
        catch (JsonException)
        {
            return null;
        }
    }
}
