using System.Text.Json;
using MarkReader.Alignment.Survey;
using MarkReader.Alignment.Visits;
using MarkReader.Application.Texts;
using MarkReader.Quantities;

namespace MarkReader.Application.Advising;

/// <summary>Reads one event of a visit file.</summary>
internal static class EventJson
{
    /// <summary>Longest reason for skipping a step, UTF-16 units.</summary>
    public const int LongestReason = 200;

    private const double LeastUncertainty = 1e-4, MostUncertainty = 50;

    private static readonly string[] s_kinds = ["mark", "turn", "survey", "shim", "moveTarget", "raiseTube", "realign", "disturbed", "skip", "again"];

    // Programs that keep a record add fields of their own.
    private static readonly string[] s_fields =
        ["kind", "leg", "path", "u", "v", "uncertainty", "covariance", "screw", "turns", "x", "y", "corner", "height", "at", "end", "gantry", "time", "note", "photo", "mark", "reason", "step", "tap"];

    /// <returns>Null when something is wrong; <paramref name="fields"/> then says what.</returns>
    public static VisitEvent? Read(JsonFields fields, JsonElement element, int number)
    {
        JsonObject e = fields.Object(element, $"{new SaidEvent(number)}", s_fields);
        string kind = e.Text("kind");
        VisitEvent? read = kind switch
        {
            "mark" => new VisitEvent.Mark(e.Text("leg"), e.Number("path"), Mark(fields, e), e.Has("gantry") ? Mm(e, "gantry") : null),
            "turn" => new VisitEvent.Turn(e.Text("leg"), e.Text("screw"), e.Number("turns")),
            "survey" => new VisitEvent.Survey(new SurveyMark(Mm(e, "x"), Mm(e, "y"), Mark(fields, e))),
            "shim" => new VisitEvent.Shim(e.Choice<BedCorner>("corner"), Mm(e, "height")),
            "moveTarget" => new VisitEvent.MoveTarget(new(e.Millimetres("u"), e.Millimetres("v"))),
            "raiseTube" => new VisitEvent.RaiseTube(Mm(e, "height")),
            "realign" => new VisitEvent.Realign(e.Text("leg"), e.Text("leg") == VisitLeg.Two ? e.Choice<GantryEnd>(e.Has("end") ? "end" : "at") : GantryEnd.Near),
            "disturbed" => new VisitEvent.Disturbed(e.Text("leg")),
            "skip" => new VisitEvent.Skip(Step(fields, e), Reason(fields, e)),
            "again" => new VisitEvent.Again(Step(fields, e)),
            _ => null,
        };
        if (read is null)
            fields.Refuse(InputTexts.Word("eventJson.kind", new SaidEvent(number), JsonFields.Short(kind)), InputTexts.Word("eventJson.knownKinds", string.Join(", ", s_kinds)));
        return fields.Wrong is null ? read : null;
    }

    /// <summary>Fields of an event, which was read before, that are not known.</summary>
    public static IReadOnlyList<Warning> Ignored(string text)
    {
        using JsonDocument document = JsonDocument.Parse(text);
        JsonFields fields = new(AdvisingFailures.Unreadable);
        fields.Object(document.RootElement, InputTexts.Get("eventJson.event"), s_fields);
        return fields.Ignored;
    }

    private static VisitStep Step(JsonFields fields, JsonObject e)
    {
        string name = e.Text("step");
        VisitStep? step = VisitSteps.Find(name);
        if (step is null)
            fields.Refuse(InputTexts.Word("eventJson.step", e.Where, JsonFields.Short(name)), InputTexts.Get("eventJson.giveOneSurveyCentring"));
        return step ?? VisitStep.LegOne;
    }

    private static string Reason(JsonFields fields, JsonObject e)
    {
        string reason = e.Text("reason").Trim();
        if (reason.Length is 0 or > LongestReason || reason.Any(char.IsControl))
            fields.Refuse(InputTexts.Word("eventJson.reasonEmptyLongerThanSigns", e.Where, LongestReason), InputTexts.Get("eventJson.sayInOneLineWhy"));
        return reason;
    }

    private static MeasuredPoint Mark(JsonFields fields, JsonObject e)
    {
        CardPoint at = new(e.Millimetres("u"), e.Millimetres("v"));
        return new(at, e.Has("covariance") ? Covariance(fields, e) : Covariance2.Isotropic(Uncertainty(fields, e)));
    }

    private static double Uncertainty(JsonFields fields, JsonObject e)
    {
        double uncertainty = e.Number("uncertainty");
        if (uncertainty is >= LeastUncertainty and <= MostUncertainty)
            return uncertainty;
        fields.Refuse(InputTexts.Word("eventJson.uncertaintyNotBetweenAnd", e.Where, new SaidLength(LeastUncertainty, "0.####", HasUnit: false), new SaidLength(MostUncertainty)), InputTexts.Word("eventJson.giveEveryMarkStandardUncertainty", new SaidLength(0.05)));
        return 1;
    }

    private static Covariance2 Covariance(JsonFields fields, JsonObject e)
    {
        double[] c = [.. e.List("covariance").SelectMany(row => row.ValueKind == JsonValueKind.Array ? row.EnumerateArray().ToArray() : [])
            .Select(x => x.ValueKind == JsonValueKind.Number && x.TryGetDouble(out double value) ? value : double.NaN)];
        // As a mark's uncertainty in every direction.
        const double least = LeastUncertainty * LeastUncertainty, most = MostUncertainty * MostUncertainty;
        if (c.Length == 4 && c[0] is >= least and <= most && c[3] is >= least and <= most && c[1] == c[2] && (c[0] * c[3]) - (c[1] * c[1]) >= least * least)
            return new(c[0], c[1], c[3]);
        fields.Refuse(InputTexts.Word("eventJson.covarianceNoCovarianceMark", e.Where), InputTexts.Get("eventJson.giveUuUvUvVv"));
        return Covariance2.Isotropic(1);
    }

    private static Length Mm(JsonObject of, string name) => Length.FromMillimetres(of.Millimetres(name));
}
