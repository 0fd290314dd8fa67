using System.Text.Json;
using MarkReader.Application.Texts;

namespace MarkReader.Application.Advising;

/// <summary>JSON from outside.</summary>
internal static class JsonText
{
    /// <summary>How deep a visit file may be nested.</summary>
    public const int MostDepth = 16;

    /// <returns>Null when it cannot be used; <paramref name="wrong"/> then says why, to follow the name of what was read.</returns>
    public static JsonDocument? Parse(ReadOnlyMemory<byte> bytes, JsonDocumentOptions options, out string wrong)
    {
        wrong = "";
        JsonDocument? document = null;
        try
        {
            document = JsonDocument.Parse(WithoutMark(bytes), options);
            ReadTexts(document.RootElement);
            return document;
        }
        catch (JsonException e)
        {
            wrong = InputTexts.Say("jsonText.notJsonAtLine", (e.LineNumber ?? 0) + 1);
        }
        catch (InvalidOperationException)
        {
            // Bytes that are not UTF-8, or half of a surrogate pair: found only when a text is read.
            wrong = InputTexts.Get("jsonText.hasTextThatNotUnicode");
        }

        document?.Dispose();
        return null;
    }

    // Editors and spreadsheets begin files with it.
    public static ReadOnlyMemory<byte> WithoutMark(ReadOnlyMemory<byte> bytes) => bytes.Span.StartsWith((ReadOnlySpan<byte>)[0xEF, 0xBB, 0xBF]) ? bytes[3..] : bytes;

    private static void ReadTexts(JsonElement element)
    {
        if (element.ValueKind == JsonValueKind.String)
            _ = element.GetString();
        if (element.ValueKind == JsonValueKind.Array)
        {
            foreach (JsonElement item in element.EnumerateArray())
                ReadTexts(item);
        }

        if (element.ValueKind == JsonValueKind.Object)
        {
            foreach (JsonProperty field in element.EnumerateObject())
            {
                _ = field.Name;
                ReadTexts(field.Value);
            }
        }
    }
}
