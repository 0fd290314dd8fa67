using System.Text.Json;
using MarkReader.Application.Reports;

namespace MarkReader.Application.VisitLog.Bundles;

/// <summary>Reads what was measured in a photo elsewhere.</summary>
internal static class StrictReport
{
    private static readonly JsonSerializerOptions s_strict = new(ReportJson.Options) { RespectNullableAnnotations = true, RespectRequiredConstructorParameters = true };

    /// <summary>The report with the fields that are known, without the projection, which is worked out from the photo again; null when it is none, or one of a version that had other fields.</summary>
    public static string? Read(JsonElement element)
    {
        try
        {
            return element.Deserialize<MeasureReport>(s_strict) is { } report && IsWhole(report) ? ReportJson.Write(report with { Projection = null }) : null;
        }
        catch (JsonException)
        {
            return null;
        }
    }

    private static bool IsWhole(MeasureReport report) =>
        report.Marks.All(m => m is not null && new[] { m.U, m.V, m.X, m.Y, m.Diameter }.All(IsUsual) && IsMatrix(m.Covariance) && (m.Budget ?? []).All(c => c is not null && IsMatrix(c.Covariance)))
        && report.Warnings.All(w => w is not null)
        && (report.Doubtful ?? []).All(d => d is not null);

    private static bool IsMatrix(double[][] c) => c is [{ Length: 2 }, { Length: 2 }] && c.All(row => row.All(IsUsual));

    private static bool IsUsual(double value) => Math.Abs(value) < 1e6;
}
