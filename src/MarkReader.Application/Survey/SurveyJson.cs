using System.Text.Json;
using MarkReader.Alignment.Survey;
using MarkReader.Quantities;

namespace MarkReader.Application.Survey;

/// <summary>A survey as the list of a visit's survey events: [{"kind": "survey", "x", "y", "u", "v", "uncertainty"}]. The kind may be left out; other fields are ignored.</summary>
internal static class SurveyJson
{
    private const string Hint = "write a list like [{\"kind\": \"survey\", \"x\": 0, \"y\": 400, \"u\": 0.1, \"v\": 0.6, \"uncertainty\": 0.05}], in mm";

    private static readonly string[] s_fields = ["x", "y", "u", "v", "uncertainty"];

    public static Outcome<SurveyMarks> Read(string text)
    {
        try
        {
            using JsonDocument document = JsonDocument.Parse(text);
            return document.RootElement.ValueKind == JsonValueKind.Array ? Marks(document.RootElement) : SurveyFile.Unreadable("the JSON is not a list", Hint);
        }
        catch (JsonException e)
        {
            return SurveyFile.Unreadable($"it is not JSON at line {(e.LineNumber ?? 0) + 1}", Hint);
        }
    }

    private static Outcome<SurveyMarks> Marks(JsonElement list)
    {
        List<SurveyMark> marks = [];
        foreach (JsonElement element in list.EnumerateArray())
        {
            string where = $"event {marks.Count + 1}";
            if (element.ValueKind != JsonValueKind.Object)
                return SurveyFile.Unreadable($"{where} is not an object", Hint);
            if (element.TryGetProperty("kind", out JsonElement kind) && !(kind.ValueKind == JsonValueKind.String && kind.ValueEquals("survey")))
                return SurveyFile.Unreadable($"{where} is of another kind than survey", "give the events of one survey only, none before or after work on the machine");
            double[] numbers = new double[s_fields.Length];
            for (int i = 0; i < numbers.Length; i++)
            {
                if (!element.TryGetProperty(s_fields[i], out JsonElement value) || value.ValueKind != JsonValueKind.Number || !value.TryGetDouble(out numbers[i]))
                    return SurveyFile.Unreadable($"{where} has no number {s_fields[i]}", Hint);
            }

            if (!SurveyFile.Mark(where, numbers).TryGet(out SurveyMark? mark, out Failure? failure))
                return failure;
            marks.Add(mark);
        }

        return new SurveyMarks(marks);
    }
}
