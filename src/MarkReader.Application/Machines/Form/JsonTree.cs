using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Unicode;

namespace MarkReader.Application.Machines.Form;

/// <summary>A document whose fields can be changed one by one; paths name fields in fields with points between.</summary>
internal static class JsonTree
{
    private static readonly JsonSerializerOptions s_written = new() { WriteIndented = true, Encoder = JavaScriptEncoder.Create(UnicodeRanges.All) };

    /// <summary>The tree of a text that was read before as a machine's. Of fields with one name the last counts, as everywhere here.</summary>
    public static JsonObject Parse(string text)
    {
        using JsonDocument document = JsonDocument.Parse(text);
        return (JsonObject)Of(document.RootElement)!;
    }

    public static string Text(JsonObject tree) => tree.ToJsonString(s_written);

    /// <summary>The field; null when it is missing or null.</summary>
    public static JsonNode? Get(JsonObject owner, string path)
    {
        JsonNode? node = owner;
        foreach (string name in path.Split('.'))
            node = (node as JsonObject)?[name];
        return node;
    }

    /// <summary>The finite number in a field, else null.</summary>
    public static double? Number(JsonObject owner, string path) =>
        Get(owner, path) is JsonValue value && value.GetValueKind() == JsonValueKind.Number && value.TryGetValue(out double number) && double.IsFinite(number) ? number : null;

    /// <summary>The text in a field; a number counts as its digits.</summary>
    public static string Word(JsonObject owner, string path) => Get(owner, path) is JsonValue value ? value.ToString() : "";

    /// <summary>Sets a field, making what lies around it; null removes it.</summary>
    public static void Set(JsonObject owner, string path, JsonNode? value)
    {
        string[] names = path.Split('.');
        foreach (string name in names[..^1])
        {
            if (owner[name] is not JsonObject inner)
            {
                if (value is null)
                    return;
                owner[name] = inner = [];
            }

            owner = inner;
        }

        if (value is null)
            owner.Remove(names[^1]);
        else
            owner[names[^1]] = value;
    }

    private static JsonNode? Of(JsonElement element) => element.ValueKind switch
    {
        JsonValueKind.Object => new JsonObject(element.EnumerateObject().GroupBy(f => f.Name).Select(f => KeyValuePair.Create(f.Key, Of(f.Last().Value)))),
        JsonValueKind.Array => new JsonArray([.. element.EnumerateArray().Select(Of)]),
        JsonValueKind.Null => null,
        _ => JsonValue.Create(element.Clone()),
    };
}
