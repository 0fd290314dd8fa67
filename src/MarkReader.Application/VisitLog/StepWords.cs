using System.Globalization;
using System.Text.Json;
using MarkReader.Application.Advising;
using MarkReader.Quantities;
using static MarkReader.Quantities.Texts<MarkReader.Application.Texts.AdviceTexts>;

namespace MarkReader.Application.VisitLog;

/// <summary>Says in a refusal or a warning which entry of a kept visit is meant, by the number that its list shows: "entry 8 (mark on leg 1 at 480 mm)" in place of "event 8".</summary>
internal static class StepWords
{
    private const int LongestName = 20;

    /// <param name="events">Those that the refusal counts: their number in the visit and their JSON.</param>
    public static Failure Name(Failure failure, IReadOnlyList<(int Number, string Text)> events) =>
        failure with { What = failure.What.Name(Of(events)), Remedy = failure.Remedy.Name(Of(events)) };

    /// <summary>What an event is called, by its place among these from 1.</summary>
    public static Func<int, Wording> Of(IReadOnlyList<(int Number, string Text)> events) =>
        place => place <= events.Count ? Of(events[place - 1].Number, events[place - 1].Text) : $"{new SaidEvent(place)}";

    // The event may be what is wrong: what cannot be read in it is left out.
    private static Wording Of(int number, string text)
    {
        string n = number.ToString(CultureInfo.InvariantCulture);
        using JsonDocument? document = JsonText.Parse(System.Text.Encoding.UTF8.GetBytes(text), new() { MaxDepth = JsonText.MostDepth }, out _);
        if (document is not { RootElement: { ValueKind: JsonValueKind.Object } e })
            return Wording.Of(Get("step.plain"), n);
        return Word(e, "kind") switch
        {
            "mark" when Length(e, "path") is { } path => Wording.Of(Get("step.mark"), n, Word(e, "leg"), path),
            "survey" when Length(e, "x") is { } x && Length(e, "y") is { } y => Wording.Of(Get("step.survey"), n, x, y),
            "turn" => Wording.Of(Get("step.turn"), n, Word(e, "leg"), Word(e, "screw")),
            "shim" => Wording.Of(Get("step.shim"), n),
            "moveTarget" => Wording.Of(Get("step.moveTarget"), n),
            "raiseTube" => Wording.Of(Get("step.raiseTube"), n),
            "realign" => Wording.Of(Get("step.realign"), n, Word(e, "leg")),
            "disturbed" => Wording.Of(Get("step.disturbed"), n, Word(e, "leg")),
            "skip" => Wording.Of(Get("step.skip"), n, Word(e, "step")),
            "again" => Wording.Of(Get("step.again"), n, Word(e, "step")),
            _ => Wording.Of(Get("step.plain"), n),
        };
    }

    private static string Word(JsonElement e, string name)
    {
        string word = e.TryGetProperty(name, out JsonElement value) && value.ValueKind is JsonValueKind.String or JsonValueKind.Number ? value.ToString() : "";
        string line = string.Concat(word.Select(c => char.IsControl(c) ? ' ' : c)).Trim();
        return line.Length > LongestName ? line[..LongestName] + "…" : line;
    }

    private static SaidLength? Length(JsonElement e, string name) =>
        e.TryGetProperty(name, out JsonElement value) && value.ValueKind == JsonValueKind.Number && value.TryGetDouble(out double mm) ? new SaidLength(mm, "0.#") : null;
}
