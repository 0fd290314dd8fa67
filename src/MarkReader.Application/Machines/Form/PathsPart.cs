using System.Text.Json.Nodes;

namespace MarkReader.Application.Machines.Form;

/// <summary>A leg's near and far path, or near path and travel.</summary>
internal sealed class PathsPart(string leg) : FormPart(leg + Near, leg + Far, leg + Travel)
{
    public const string Near = "-nearPath", Far = "-farPath", Travel = "-travel";

    // As far as rounded texts of three lengths may disagree, mm.
    private const double Agreement = 0.5;

    private static string Measure => MachineTexts.Get("pathsPart.measureAlongBeamAsDrawing");

    private static NumberRule NearRule => Path(MachineTexts.Get("pathsPart.nearPathLength"));

    private static NumberRule FarRule => Path(MachineTexts.Get("pathsPart.farPathLength"));

    private static NumberRule TravelRule => Path(MachineTexts.Get("pathsPart.travel"));

    public override bool Required => true;

    public override void Show(JsonObject owner, FormSheet sheet)
    {
        double? near = JsonTree.Number(owner, "nearPath"), far = JsonTree.Number(owner, "farPath");
        sheet[leg + Near] = near is { } n ? sheet.Lengths.Write(n) : "";
        sheet[leg + Far] = far is { } f ? sheet.Lengths.Write(f) : "";
        sheet[leg + Travel] = far - near is { } t ? sheet.Lengths.Write(t) : "";
    }

    public override void Write(FormSheet sheet, FormSheet shown, JsonObject owner)
    {
        double? near = Changed(Near) ? NearRule.Read(leg + Near, sheet, required: true) : JsonTree.Number(owner, "nearPath");
        bool byTravel = sheet[leg + Travel].Length > 0 && (sheet[leg + Far].Length == 0 || (Changed(Travel) && !Changed(Far)));
        double? far = byTravel ? near + TravelRule.Read(leg + Travel, sheet, required: true)
            : Changed(Far) ? FarRule.Read(leg + Far, sheet, required: true)
            : JsonTree.Number(owner, "farPath");
        if (near is null || far is null)
            return;
        if (!byTravel && Changed(Travel) && sheet[leg + Travel].Length > 0
            && TravelRule.Read(leg + Travel, sheet, required: true) is { } travel && Math.Abs(far.Value - near.Value - travel) > Agreement)
        {
            sheet.Refuse(leg + Travel, new(
                MachineFailures.FieldInvalid, MachineTexts.Word("pathsPart.farPathLessNearOne", sheet.Lengths.Write(far.Value - near.Value), sheet.Lengths.Unit), MachineTexts.Get("pathsPart.mendOneThreeOrLeave")));
        }

        if (Changed(Near))
            JsonTree.Set(owner, "nearPath", JsonValue.Create(near.Value));
        if (byTravel || Changed(Far))
            JsonTree.Set(owner, "farPath", JsonValue.Create(Math.Round(far.Value, 6)));

        // What must be given and is blank counts as changed, so that it is asked for.
        bool Changed(string field) => sheet[leg + field] != shown[leg + field] || (field != Travel && sheet[leg + field].Length == 0);
    }

    // What a path may be is said by the leg's own checks.
    private static NumberRule Path(string what) => new(what, -1e6, 1e6, Measure);
}
