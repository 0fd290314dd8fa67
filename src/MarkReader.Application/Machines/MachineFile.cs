using System.Text;
using System.Text.Json;
using MarkReader.Alignment.Visits;
using MarkReader.Application.Advising;
using MarkReader.Quantities;

namespace MarkReader.Application.Machines;

/// <summary>Reads a machine's document: what stands under "machine" in a visit file.</summary>
public static class MachineFile
{
    /// <summary>Largest document, bytes.</summary>
    public const int MostBytes = 64 << 10;

    /// <summary>Longest name, UTF-16 units.</summary>
    public const int LongestName = 80;

    private static string Hint => MachineTexts.Get("machineFile.writeNameLegsAsUnder");

    // Plain JSON, since it is handed on inside other JSON; a level is left for the visit round it.
    private static readonly JsonDocumentOptions s_json = new() { MaxDepth = JsonText.MostDepth - 1 };

    /// <summary>The document, when a visit to its machine can begin.</summary>
    public static Outcome<MachineDocument> Read(ReadOnlyMemory<byte> bytes)
    {
        if (bytes.Length > MostBytes)
            return new Failure(MachineFailures.TooLarge, MachineTexts.Word("machineFile.machineHasMoreThanKb", MostBytes >> 10), MachineTexts.Get("machineFile.sendOneMachineOnlyWithout"));
        using JsonDocument? document = JsonText.Parse(bytes, s_json, out string unreadable);
        if (document is null)
            return new Failure(MachineFailures.Unreadable, MachineTexts.Word("machineFile.machine", unreadable), Hint);
        JsonFields fields = new(MachineFailures.Unreadable);
        if (MachineJson.Read(fields, document.RootElement) is not { } setup)
            return fields.Wrong!;
        JsonObject machine = new(fields, document.RootElement, MachineTexts.Get("machineFile.machine2"));
        string? name = machine.Has("name") ? machine.Text("name") : null;
        if ((fields.Wrong ?? Name(name)) is { } wrong)
            return wrong;
        // Its first action is asked for, so that no machine is kept at which a visit cannot begin.
        return VisitAdviser.Advise(setup, []).TryGet(out _, out Failure? failure)
            ? new MachineDocument(Encoding.UTF8.GetString(JsonText.WithoutMark(bytes).Span), name, setup, [.. fields.Ignored, .. TravelCheck.Of(setup)])
            : failure;
    }

    private static Failure? Name(string? name) => name is null || (name.Length is > 0 and <= LongestName && !string.IsNullOrWhiteSpace(name) && !name.Any(char.IsControl))
        ? null
        : new(MachineFailures.NameInvalid, MachineTexts.Word("machineFile.machineNameEmptyLongerThan", LongestName), MachineTexts.Get("machineFile.giveShortNameOrLeave"));
}
