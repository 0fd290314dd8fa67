using System.Text.Json;
using MarkReader.Alignment.Visits;
using MarkReader.Quantities;

namespace MarkReader.Application.Advising;

/// <summary>Reads a visit file: {"machine": {…}, "events": […]}.</summary>
public static class VisitFile
{
    /// <summary>Largest file, bytes.</summary>
    public const int MostBytes = 4 << 20;

    private const string Hint = "write {\"machine\": {\"legs\": [ … ]}, \"events\": [ … ]}; the README shows one";

    public static Outcome<Visit> Read(ReadOnlyMemory<byte> bytes)
    {
        try
        {
            using JsonDocument document = JsonDocument.Parse(WithoutMark(bytes), new() { MaxDepth = 16, CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true });
            JsonFields fields = new();
            JsonObject file = fields.Object(document.RootElement, "the visit", "machine", "events");
            if (file.Find("machine") is not { } machine)
                return fields.Wrong ?? new(AdvisingFailures.Unreadable, "the visit has no machine", Hint);
            VisitSetup? setup = MachineJson.Read(fields, machine);
            VisitEvent[] events = [.. file.List("events").Select((e, i) => EventJson.Read(fields, e, i + 1)).OfType<VisitEvent>()];
            return fields.Wrong is { } wrong || setup is null ? fields.Wrong! : new Visit(setup, events, fields.Ignored);
        }
        catch (JsonException e)
        {
            return new Failure(AdvisingFailures.Unreadable, $"the visit is not JSON at line {(e.LineNumber ?? 0) + 1}", Hint);
        }
    }

    // Editors and spreadsheets begin files with it.
    private static ReadOnlyMemory<byte> WithoutMark(ReadOnlyMemory<byte> bytes) => bytes.Span.StartsWith((ReadOnlySpan<byte>)[0xEF, 0xBB, 0xBF]) ? bytes[3..] : bytes;
}
