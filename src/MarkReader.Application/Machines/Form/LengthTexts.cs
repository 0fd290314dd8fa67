using System.Globalization;
using MarkReader.Application.Inputs;
using MarkReader.Quantities;

namespace MarkReader.Application.Machines.Form;

/// <summary>How lengths stand in the fields of a form: in the user's unit, with the user's decimal sign.</summary>
/// <param name="Unit">As messages name it: "mm" or "in".</param>
/// <param name="Write">A length in mm as the text of a field.</param>
/// <param name="Read">The mm of a field's text.</param>
public sealed record LengthTexts(string Unit, Func<double, string> Write, Func<string, Outcome<Number>> Read)
{
    /// <summary>Millimetres with a point, all digits.</summary>
    public static LengthTexts Millimetres { get; } = new("mm", mm => mm.ToString(CultureInfo.InvariantCulture), NumberText.Read);
}
