using System.Text.Json;
using MarkReader.Alignment.Visits;
using MarkReader.Application.Texts;
using MarkReader.Quantities;

namespace MarkReader.Application.Advising;

/// <summary>Reads a visit file: {"machine": {…}, "events": […]}.</summary>
public static class VisitFile
{
    /// <summary>Largest file, bytes.</summary>
    public const int MostBytes = 4 << 20;

    private static string Hint => InputTexts.Get("visitFile.writeMachineLegsEventsReadme");

    private static readonly JsonDocumentOptions s_json = new() { MaxDepth = JsonText.MostDepth, CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true };

    public static Outcome<Visit> Read(ReadOnlyMemory<byte> bytes) => Read(bytes, null);

    /// <param name="events">What warnings call an event, by its place from 1; null for that place.</param>
    internal static Outcome<Visit> Read(ReadOnlyMemory<byte> bytes, Func<int, Wording>? events)
    {
        using JsonDocument? document = JsonText.Parse(bytes, s_json, out string unreadable);
        if (document is null)
            return new Failure(AdvisingFailures.Unreadable, InputTexts.Word("visitFile.visit", unreadable), Hint);
        JsonFields fields = new(AdvisingFailures.Unreadable);
        JsonObject file = fields.Object(document.RootElement, InputTexts.Get("visitFile.visit2"), "machine", "events");
        if (file.Find("machine") is not { } machine)
            return fields.Wrong ?? new(AdvisingFailures.Unreadable, InputTexts.Get("visitFile.visitHasNoMachine"), Hint);
        VisitSetup? setup = MachineJson.Read(fields, machine);
        VisitEvent[] read = [.. file.List("events").Select((e, i) => EventJson.Read(fields, e, i + 1)).OfType<VisitEvent>()];
        return fields.Wrong is { } wrong || setup is null ? fields.Wrong! : new Visit(setup, read, [.. fields.Named(events), .. TravelCheck.Of(setup)]);
    }

    /// <summary>The file of these parts, each of which is one JSON value that was read before.</summary>
    internal static string Write(string machine, IEnumerable<string> events) => $$"""
        {"machine": {{machine}},
        "events": [
        {{string.Join(",\n", events)}}
        ]}

        """;

    /// <summary>Text that was read before.</summary>
    internal static JsonDocument Parse(ReadOnlyMemory<byte> bytes) => JsonDocument.Parse(JsonText.WithoutMark(bytes), s_json);
}
