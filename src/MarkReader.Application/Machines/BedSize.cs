using System.Text.Json.Nodes;
using MarkReader.Application.Machines.Form;
using MarkReader.Quantities;

namespace MarkReader.Application.Machines;

/// <summary>How large a machine's bed is.</summary>
/// <param name="X">The head's travel.</param>
/// <param name="Y">The gantry's travel.</param>
public sealed record BedSize(Length X, Length Y)
{
    /// <summary>That of a document which was read before; null when it has no bed.</summary>
    public static BedSize? Of(string document)
    {
        JsonObject machine = JsonTree.Parse(document);
        return JsonTree.Number(machine, "bed.x") is { } x && JsonTree.Number(machine, "bed.y") is { } y
            ? new(Length.FromMillimetres(x), Length.FromMillimetres(y))
            : null;
    }
}
