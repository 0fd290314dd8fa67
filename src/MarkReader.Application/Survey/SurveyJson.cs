using System.Text.Json;
using MarkReader.Alignment.Survey;
using MarkReader.Application.Texts;
using MarkReader.Quantities;

namespace MarkReader.Application.Survey;

/// <summary>A survey as the list of a visit's survey events: [{"kind": "survey", "x", "y", "u", "v", "uncertainty"}]. The kind may be left out; other fields are ignored.</summary>
internal static class SurveyJson
{
    private static string Hint => InputTexts.Get("surveyJson.writeListLikeKindSurvey");

    private static readonly string[] s_fields = ["x", "y", "u", "v", "uncertainty"];

    public static Outcome<SurveyMarks> Read(string text)
    {
        try
        {
            using JsonDocument document = JsonDocument.Parse(text);
            return document.RootElement.ValueKind == JsonValueKind.Array ? Marks(document.RootElement) : SurveyFile.Unreadable(InputTexts.Get("surveyJson.jsonNotList"), Hint);
        }
        catch (JsonException e)
        {
            return SurveyFile.Unreadable(InputTexts.Say("surveyJson.notJsonAtLine", (e.LineNumber ?? 0) + 1), Hint);
        }
    }

    private static Outcome<SurveyMarks> Marks(JsonElement list)
    {
        List<SurveyMark> marks = [];
        foreach (JsonElement element in list.EnumerateArray())
        {
            string where = InputTexts.Say("surveyJson.event", marks.Count + 1);
            if (element.ValueKind != JsonValueKind.Object)
                return SurveyFile.Unreadable(InputTexts.Say("surveyJson.notObject", where), Hint);
            if (element.TryGetProperty("kind", out JsonElement kind) && !(kind.ValueKind == JsonValueKind.String && kind.ValueEquals("survey")))
                return SurveyFile.Unreadable(InputTexts.Say("surveyJson.anotherKindThanSurvey", where), InputTexts.Get("surveyJson.giveEventsOneSurveyOnly"));
            double[] numbers = new double[s_fields.Length];
            for (int i = 0; i < numbers.Length; i++)
            {
                if (!element.TryGetProperty(s_fields[i], out JsonElement value) || value.ValueKind != JsonValueKind.Number || !value.TryGetDouble(out numbers[i]))
                    return SurveyFile.Unreadable(InputTexts.Say("surveyJson.hasNoNumber", where, s_fields[i]), Hint);
            }

            if (!SurveyFile.Mark(where, numbers).TryGet(out SurveyMark? mark, out Failure? failure))
                return failure;
            marks.Add(mark);
        }

        return new SurveyMarks(marks);
    }
}
