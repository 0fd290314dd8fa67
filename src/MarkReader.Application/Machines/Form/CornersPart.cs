using System.Text.Json;
using System.Text.Json.Nodes;
using MarkReader.Alignment.Frames;
using MarkReader.Quantities;

namespace MarkReader.Application.Machines.Form;

/// <summary>What stands at each corner of a frame: the pivot, a screw by its name, or nothing.</summary>
internal sealed class CornersPart(string leg) : FormPart([.. Corners.Select(c => Field(leg, c))])
{
    /// <summary>The pivot's value; a screw's is its name with <see cref="Screw"/> before it.</summary>
    public const string Pivot = "pivot", Screw = "screw ";

    private static string Hint => MachineTexts.Get("cornersPart.giveThreeCornersPivotAnd");

    // What the reader of documents takes when none are given.
    private static readonly (string Name, string At)[] s_usual = [("A", "lowerRight"), ("B", "upperLeft")];

    /// <summary>As documents name them.</summary>
    public static IReadOnlyList<string> Corners { get; } = [.. Enum.GetNames<FrameCorner>().Select(JsonNamingPolicy.CamelCase.ConvertName)];

    public static string Field(string leg, string corner) => $"{leg}-{corner}";

    public override void Show(JsonObject owner, FormSheet sheet)
    {
        (string Name, string At)[] screws = [.. Entries(owner).Select(s => (JsonTree.Word(s, "name"), JsonTree.Word(s, "at")))];
        string pivot = JsonTree.Word(owner, "frame.pivot") is { Length: > 0 } at ? at : screws.Length == 3 ? "" : "lowerLeft";
        if (screws.Length == 0)
            screws = s_usual;
        foreach (string corner in Corners)
            sheet[Field(leg, corner)] = "";
        foreach ((string name, string place) in screws)
            sheet[Field(leg, place)] = Screw + name;
        if (pivot.Length > 0)
            sheet[Field(leg, pivot)] = Pivot;
    }

    public override void Write(FormSheet sheet, FormSheet shown, JsonObject owner)
    {
        string[] pivots = [.. Corners.Where(c => sheet[Field(leg, c)] == Pivot)];
        (string Name, string At)[] screws = [.. Corners.Where(c => sheet[Field(leg, c)].StartsWith(Screw, StringComparison.Ordinal)).Select(c => (sheet[Field(leg, c)][Screw.Length..], c))];
        if (pivots.Length > 1 || pivots.Length + screws.Length != 3)
        {
            sheet.Refuse(Field(leg, "frame"), new(MachineFailures.FieldInvalid, MachineTexts.Word("cornersPart.has", Count("pivot", pivots.Length), Count("screw", screws.Length)), Hint));
            return;
        }

        ScrewCorner[] placed = [.. screws.Select(s => new ScrewCorner(s.Name, Corner(s.At)))];
        if (!MirrorFrame.AtCorners(pivots.Length == 0 ? null : Corner(pivots[0]), placed, 30, 0.7).TryGet(out _, out Failure? failure))
        {
            sheet.Refuse(Field(leg, "frame"), failure);
            return;
        }

        JsonTree.Set(owner, "frame.pivot", pivots.Length == 0 ? null : JsonValue.Create(pivots[0]));
        // Screws keep their order and what else is said of them; new ones follow.
        JsonObject[] known = [.. Entries(owner)];
        IEnumerable<JsonObject> kept = known.Where(k => screws.Any(s => s.Name == JsonTree.Word(k, "name")));
        IEnumerable<JsonObject> added = screws.Where(s => known.All(k => JsonTree.Word(k, "name") != s.Name)).OrderBy(s => s.Name, StringComparer.Ordinal).Select(s => new JsonObject { ["name"] = s.Name });
        JsonObject[] all = [.. kept.Select(k => (JsonObject)k.DeepClone()), .. added];
        foreach (JsonObject screw in all)
            screw["at"] = screws.First(s => s.Name == JsonTree.Word(screw, "name")).At;
        JsonTree.Set(owner, "frame.screws", new JsonArray([.. all]));
    }

    private static IEnumerable<JsonObject> Entries(JsonObject owner) => (JsonTree.Get(owner, "frame.screws") as JsonArray ?? []).OfType<JsonObject>();

    private static FrameCorner Corner(string name) => Enum.Parse<FrameCorner>(name, ignoreCase: true);

    private static string Count(string what, int count) => MachineTexts.Say($"cornersPart.{what}.{count switch { 0 => "none", 1 => "one", _ => "several" }}", count);
}
