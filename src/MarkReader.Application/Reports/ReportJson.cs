using System.Text.Encodings.Web;
using System.Text.Json;

namespace MarkReader.Application.Reports;

/// <summary>How reports are written as JSON: camelCase, as both faces send them.</summary>
public static class ReportJson
{
    /// <summary>Names and encoding of every report.</summary>
    public static JsonSerializerOptions Options { get; } = new(JsonSerializerDefaults.Web)
    {
        WriteIndented = true,
        // Not for embedding in HTML: quotes and signs such as × stay readable.
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    public static string Write<T>(T report) => JsonSerializer.Serialize(report, Options);
}
