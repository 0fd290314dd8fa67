using System.Text.Json;
using MarkReader.Application.Texts;
using MarkReader.Quantities;

namespace MarkReader.Application.Advising;

/// <summary>Reads the fields of JSON objects from outside and remembers the first thing that is wrong; values read after it mean nothing.</summary>
/// <param name="code">Of a refusal.</param>
internal sealed class JsonFields(FailureCode code)
{
    private const int LongestText = 60;

    private readonly List<Wording> _ignored = [];

    public Failure? Wrong { get; private set; }

    /// <summary>Fields that were given and not known.</summary>
    public IReadOnlyList<Warning> Ignored => Named(null);

    /// <summary>The same, with events called by other words.</summary>
    public IReadOnlyList<Warning> Named(Func<int, Wording>? events) => [.. _ignored.Select(w => new Warning("fieldIgnored", (events is null ? w : w.Name(events)).ToString()))];

    public void Refuse(Wording what, Wording hint) => Wrong ??= new(code, what, hint);

    /// <summary>The object; without fields when it is not one.</summary>
    /// <param name="where">What the object is, as messages call it.</param>
    /// <param name="known">Its fields, also those that are read elsewhere.</param>
    public JsonObject Object(JsonElement element, Wording where, params string[] known)
    {
        if (element.ValueKind != JsonValueKind.Object)
        {
            Refuse(InputTexts.Word("jsonFields.notObject", where), InputTexts.Get("jsonFields.writeInBraces"));
            return new(this, default, where);
        }

        foreach (JsonProperty field in element.EnumerateObject().Where(f => !known.Contains(f.Name)))
            _ignored.Add(InputTexts.Word("jsonFields.hasFieldThatNotKnown", where, Short(field.Name), string.Join(", ", known)));
        return new(this, element, where);
    }

    /// <summary>A text from outside, as messages show it.</summary>
    public static string Short(string text) => text.Length > LongestText ? text[..LongestText] + "…" : text;
}

/// <summary>One JSON object.</summary>
internal sealed class JsonObject(JsonFields fields, JsonElement element, Wording where)
{
    /// <summary>No length of a machine is larger, mm.</summary>
    public const double LargestLength = 1e6;

    public Wording Where => where;

    public bool Has(string name) => Find(name) is not null;

    /// <summary>A finite number.</summary>
    public double Number(string name, double? otherwise = null)
    {
        if (Find(name) is not { } value)
            return otherwise ?? Missing<double>(name, InputTexts.Get("jsonFields.number"));
        if (value.ValueKind == JsonValueKind.Number && value.TryGetDouble(out double number) && double.IsFinite(number))
            return number;
        fields.Refuse(InputTexts.Word("jsonFields.notNumber", name, where), InputTexts.Get("jsonFields.writeNumberWithDecimalPoint"));
        return 0;
    }

    /// <summary>A length, mm; beyond any machine's it is refused here, so that no later step meets it.</summary>
    public double Millimetres(string name, double? otherwise = null)
    {
        double value = Number(name, otherwise);
        if (Math.Abs(value) <= LargestLength)
            return value;
        fields.Refuse(InputTexts.Word("jsonFields.beyondAnyMachine", name, where), InputTexts.Word("jsonFields.giveIn", Wording.Unit));
        return 0;
    }

    /// <summary>A text; a number where a name is asked for counts as its digits.</summary>
    public string Text(string name, string? otherwise = null)
    {
        if (Find(name) is not { } value)
            return otherwise ?? Missing<string>(name, InputTexts.Get("jsonFields.text")) ?? string.Empty;
        if (value.ValueKind == JsonValueKind.String)
            return value.GetString()!;
        if (value.ValueKind == JsonValueKind.Number)
            return value.GetRawText();
        fields.Refuse(InputTexts.Word("jsonFields.notText", name, where), InputTexts.Get("jsonFields.writeInQuotes"));
        return string.Empty;
    }

    /// <summary>One of the names of an enumeration, in lower camel case.</summary>
    public T Choice<T>(string name, T? otherwise = null)
        where T : struct, Enum
    {
        if (otherwise is { } value && !Has(name))
            return value;
        string text = Text(name);
        T[] all = Enum.GetValues<T>();
        int at = Array.FindIndex(all, v => JsonNamingPolicy.CamelCase.ConvertName(v.ToString()) == text);
        if (at < 0)
            fields.Refuse(InputTexts.Word("jsonFields.ofIs", name, where, JsonFields.Short(text)), InputTexts.Word("jsonFields.giveOne", string.Join(", ", all.Select(v => JsonNamingPolicy.CamelCase.ConvertName(v.ToString())))));
        return at < 0 ? default : all[at];
    }

    public JsonElement? Find(string name) =>
        element.ValueKind == JsonValueKind.Object && element.TryGetProperty(name, out JsonElement value) && value.ValueKind != JsonValueKind.Null ? value : null;

    public IReadOnlyList<JsonElement> List(string name, bool required = false)
    {
        if (Find(name) is not { } value)
            return required ? Missing<IReadOnlyList<JsonElement>>(name, InputTexts.Get("jsonFields.list")) ?? [] : [];
        if (value.ValueKind == JsonValueKind.Array)
            return [.. value.EnumerateArray()];
        fields.Refuse(InputTexts.Word("jsonFields.notList", name, where), InputTexts.Get("jsonFields.writeInBrackets"));
        return [];
    }

    private T? Missing<T>(string name, string what)
    {
        fields.Refuse(InputTexts.Word("jsonFields.hasNo", where, name), InputTexts.Word("jsonFields.giveAs", what));
        return default;
    }
}
