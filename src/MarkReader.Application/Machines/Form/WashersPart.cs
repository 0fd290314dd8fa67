using System.Globalization;
using System.Text.Json.Nodes;
using MarkReader.Alignment.Shims;
using MarkReader.Application.Inputs;
using MarkReader.Application.Shims;
using MarkReader.Quantities;

namespace MarkReader.Application.Machines.Form;

/// <summary>The washers in stock: thicknesses with semicolons between, each with a count where it is limited.</summary>
internal sealed class WashersPart() : FormPart(Field)
{
    public const string Field = "washers";

    public override void Show(JsonObject owner, FormSheet sheet) => sheet[Field] = string.Join("; ", Items(owner).Select(w => Text(w, sheet.Lengths)));

    public override void Write(FormSheet sheet, FormSheet shown, JsonObject owner)
    {
        if (sheet[Field].Length == 0)
        {
            JsonTree.Set(owner, Field, null);
            return;
        }

        List<JsonNode?> known = [.. Items(owner)];
        JsonArray all = [];
        foreach (string item in Parts(sheet[Field], sheet.Lengths))
        {
            // An item that was there before stays as it was, whatever its text leaves out.
            if (known.FirstOrDefault(w => Text(w, sheet.Lengths) == item) is { } before)
            {
                all.Add(before.DeepClone());
                continue;
            }

            if (Read(item, sheet) is not { } washer)
                return;
            all.Add(washer);
        }

        JsonTree.Set(owner, Field, all);
    }

    private static JsonNode? Read(string item, FormSheet sheet)
    {
        string thickness = item, count = "";
        int times = item.IndexOfAny(['x', 'X', '×', '*']);
        if (times > 0)
            (thickness, count) = (item[..times], item[(times + 1)..].Trim());
        if (!sheet.Lengths.Read(thickness).TryGet(out Number? number, out Failure? failure))
        {
            sheet.Refuse(Field, failure);
            return null;
        }

        double mm = Math.Round(number.Value, 6);
        int pieces = 0;
        bool counted = times > 0;
        if (counted && !(int.TryParse(count, NumberStyles.None, CultureInfo.InvariantCulture, out pieces) && pieces is > 0 and <= 1_000_000))
            sheet.Refuse(Field, new(MachineFailures.FieldInvalid, MachineTexts.Word("washersPart.hasNoCountBehindX", ListText.Shown(item)), MachineTexts.Word("washersPart.writeHowManyThereLike", sheet.Lengths.Write(0.8))));
        else if (!double.IsFinite(mm) || !StackSearch.Best([UsualStock.Piece(mm)], Length.Zero, Length.FromMillimetres(0.1)).TryGet(out _, out failure))
            sheet.Refuse(Field, failure ?? new(MachineFailures.FieldInvalid, MachineTexts.Word("washersPart.noThickness", ListText.Shown(item)), MachineTexts.Word("washersPart.writeLike", sheet.Lengths.Write(0.8))));
        else
            return counted ? new JsonObject { ["thickness"] = mm, ["count"] = pieces } : JsonValue.Create(mm);
        return null;
    }

    // Semicolons or line ends between items; without any, blanks, and commas unless they stand before decimals.
    private static IEnumerable<string> Parts(string text, LengthTexts lengths)
    {
        if (text.IndexOfAny([';', '\n']) >= 0)
            return text.Split(';', '\n').Select(i => i.Trim()).Where(i => i.Length > 0);
        return lengths.Write(0.5).Contains(',', StringComparison.Ordinal) ? ListText.Items(text.Replace(' ', ';')) : ListText.Items(text);
    }

    private static IEnumerable<JsonNode?> Items(JsonObject owner) => JsonTree.Get(owner, Field) as JsonArray ?? [];

    private static string Text(JsonNode? washer, LengthTexts lengths) => washer is JsonObject counted
        ? lengths.Write(JsonTree.Number(counted, "thickness") ?? 0) + (JsonTree.Get(counted, "count") is { } count ? " x" + count : "")
        : lengths.Write((washer as JsonValue)?.TryGetValue(out double plain) == true ? plain : 0);
}
