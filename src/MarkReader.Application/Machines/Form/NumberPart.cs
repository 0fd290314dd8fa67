using System.Globalization;
using System.Text.Json.Nodes;
using MarkReader.Alignment.Estimates;
using MarkReader.Application.Inputs;
using MarkReader.Quantities;

namespace MarkReader.Application.Machines.Form;

/// <summary>A number with bounds: mm in the user's unit, degrees or days.</summary>
/// <param name="What">As messages call it.</param>
/// <param name="Hint">What to do when it is missing or out of bounds.</param>
internal sealed record NumberRule(string What, double Least, double Most, string Hint)
{
    // Of a length in inches; beyond what any rule shows, mm.
    private const int Decimals = 6;

    /// <summary>What it counts when it is no length: degrees, days.</summary>
    public string? Unit { get; init; }

    public string Show(double value, LengthTexts lengths) => Unit is not null ? value.ToString(CultureInfo.InvariantCulture) : lengths.Write(value);

    /// <summary>The number in a field; null when it is refused, or blank and <paramref name="required"/> is false.</summary>
    public double? Read(string field, FormSheet sheet, bool required)
    {
        string text = sheet[field];
        if (text.Length == 0)
        {
            if (required)
                sheet.Refuse(field, new(MachineFailures.FieldMissing, MachineTexts.Word("numberPart.missing", What), Hint));
            return null;
        }

        if (!(Unit is not null ? NumberText.Read(text) : sheet.Lengths.Read(text)).TryGet(out Number? read, out Failure? failure))
        {
            sheet.Refuse(field, failure);
            return null;
        }

        double value = double.IsFinite(read.Value) ? Math.Round(read.Value, Decimals) : read.Value;
        if (value >= Least && value <= Most)
            return value;
        sheet.Refuse(field, new(MachineFailures.FieldInvalid, MachineTexts.Word("numberPart.notBetweenAnd", What, Shown(value, sheet.Lengths), Show(Least, sheet.Lengths), Show(Most, sheet.Lengths), Unit ?? sheet.Lengths.Unit), Hint));
        return null;
    }

    private string Shown(double value, LengthTexts lengths) => double.IsFinite(value) && Math.Abs(value) < 1e9 ? Show(value, lengths) : InputChecks.Text(value);
}

/// <summary>A number in a field of its own; blank: left out.</summary>
internal sealed class NumberPart(string field, string path, NumberRule rule, bool required = false) : FormPart(field)
{
    public override bool Required => required;

    public override void Show(JsonObject owner, FormSheet sheet) => sheet[field] = JsonTree.Number(owner, path) is { } value ? rule.Show(value, sheet.Lengths) : "";

    public override void Write(FormSheet sheet, FormSheet shown, JsonObject owner)
    {
        double? value = rule.Read(field, sheet, required);
        if (value is not null || sheet[field].Length == 0)
            JsonTree.Set(owner, path, value is { } given ? JsonValue.Create(given) : null);
    }
}

/// <summary>A number that is chosen among some, or given in a field of its own, which is named with "-own" behind.</summary>
internal sealed class OfferedPart(string field, string path, IReadOnlyList<double> offered, NumberRule rule) : FormPart(field, field + Own)
{
    /// <summary>Value of the choice that takes the field of its own; with a dash before it the end of that field's name.</summary>
    public const string OwnValue = "own", Own = "-own";

    public override void Show(JsonObject owner, FormSheet sheet)
    {
        double? value = JsonTree.Number(owner, path);
        bool own = value is { } given && !offered.Contains(given);
        sheet[field] = value is null ? "" : own ? OwnValue : Text(value.Value);
        sheet[field + Own] = own ? rule.Show(value!.Value, sheet.Lengths) : "";
    }

    public override void Write(FormSheet sheet, FormSheet shown, JsonObject owner)
    {
        string chosen = sheet[field];
        double? value = chosen == OwnValue ? rule.Read(field + Own, sheet, required: true) : offered.Cast<double?>().FirstOrDefault(o => Text(o!.Value) == chosen);
        if (value is not null || chosen.Length == 0)
            JsonTree.Set(owner, path, value is { } given ? JsonValue.Create(given) : null);
        else if (chosen != OwnValue)
            sheet.Refuse(field, new(MachineFailures.FieldInvalid, MachineTexts.Word("numberPart.noneThoseOffered", rule.What), MachineTexts.Get("common.chooseOneList")));
    }

    private static string Text(double value) => value.ToString(CultureInfo.InvariantCulture);
}
