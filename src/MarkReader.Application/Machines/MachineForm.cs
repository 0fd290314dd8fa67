using System.Text;
using System.Text.Json.Nodes;
using MarkReader.Alignment.Visits;
using MarkReader.Application.Machines.Form;
using MarkReader.Quantities;

namespace MarkReader.Application.Machines;

/// <summary>A machine's document as the texts of a form's fields, and back.</summary>
/// <remarks>
/// A field whose text was not changed leaves its number as it was, whatever the text rounds; what the form does not show stays
/// in the document. With nothing changed the document is the same, byte for byte.
/// </remarks>
public sealed class MachineForm
{
    /// <summary>A document with nothing measured yet: both legs, bed and aperture.</summary>
    public const string Blank = """{"legs": [{"name": "1", "incidenceDegrees": 45}, {"name": "2"}], "bed": {}, "aperture": {}}""";

    private readonly FormSheet _sheet;

    private MachineForm(FormSheet sheet) => _sheet = sheet;

    /// <summary>Names of all fields.</summary>
    public static IReadOnlyList<string> Fields { get; } = [.. FormSections.All.SelectMany(s => s.Fields)];

    /// <summary>The text of a field; blank when it has none.</summary>
    public string this[string field] => _sheet[field];

    /// <summary>The form of a document.</summary>
    /// <param name="document">The text of a <see cref="MachineDocument"/>, or <see cref="Blank"/>.</param>
    public static MachineForm Of(string document, LengthTexts lengths) => new(Shown(JsonTree.Parse(document), lengths));

    /// <summary>The form as it was sent.</summary>
    /// <param name="text">The text of a field, or null.</param>
    public static MachineForm Sent(Func<string, string?> text, LengthTexts lengths) => new(new(lengths, Fields.ToDictionary(f => f, f => text(f) ?? "")));

    /// <summary>The document that this form asks for, or what is wrong, by field; "form" where no field is meant.</summary>
    /// <param name="basis">The document from which the form was made.</param>
    public (MachineDocument? Document, IReadOnlyDictionary<string, Failure> Wrong) Apply(string basis)
    {
        JsonObject before = JsonTree.Parse(basis), machine = (JsonObject)before.DeepClone();
        FormSheet sent = new(_sheet.Lengths, _sheet.Texts), shown = Shown(before, _sheet.Lengths);
        foreach (FormSection section in FormSections.All)
            section.Write(sent, shown, machine);
        if (sent.Wrong.Count > 0)
            return (null, sent.Wrong);
        string text = JsonNode.DeepEquals(before, machine) ? basis : JsonTree.Text(machine);
        if (MachineFile.Read(Encoding.UTF8.GetBytes(text)).TryGet(out MachineDocument? document, out Failure? failure))
            return (document, sent.Wrong);
        sent.Refuse(FieldOf(failure.Code), failure);
        return (null, sent.Wrong);
    }

    private static FormSheet Shown(JsonObject machine, LengthTexts lengths)
    {
        FormSheet sheet = new(lengths);
        foreach (FormSection section in FormSections.All)
            section.Show(machine, sheet);
        return sheet;
    }

    private static string FieldOf(FailureCode code) =>
        code == MachineFailures.NameInvalid ? "name"
        : code == VisitFailures.BedInvalid ? "bed"
        : code == VisitFailures.ApertureInvalid ? "aperture"
        : code == VisitFailures.LegsInvalid ? "leg1"
        : "form";
}
