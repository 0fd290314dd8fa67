using System.Text.Json.Nodes;

namespace MarkReader.Application.Machines.Form;

/// <summary>A text; blank: left out.</summary>
/// <param name="allowed">The texts that may be chosen; null for any.</param>
/// <param name="blank">A text of the document that the form shows as blank.</param>
internal sealed class WordPart(string field, string path, string what, IReadOnlyList<string>? allowed = null, string? blank = null) : FormPart(field)
{
    public override void Show(JsonObject owner, FormSheet sheet) => sheet[field] = JsonTree.Word(owner, path) is var text && text == blank ? "" : text;

    public override void Write(FormSheet sheet, FormSheet shown, JsonObject owner)
    {
        string text = sheet[field];
        if (text.Length > 0 && allowed?.Contains(text) == false)
            sheet.Refuse(field, new(MachineFailures.FieldInvalid, MachineTexts.Word("wordPart.noneThoseOffered", what), MachineTexts.Get("common.chooseOneList")));
        else
            JsonTree.Set(owner, path, text.Length == 0 ? null : JsonValue.Create(text));
    }
}
