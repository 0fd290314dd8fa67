using System.Text.Json;

namespace MarkReader.Application.Machines;

/// <summary>Machines to start from, by their size; read from calibration/machines.</summary>
public static class MachinePresets
{
    private const string Folder = "machines/";

    /// <summary>From small to large.</summary>
    public static IReadOnlyList<MachinePreset> All { get; } = Read();

    private static MachinePreset[] Read() =>
        [.. typeof(MachinePresets).Assembly.GetManifestResourceNames().Where(n => n.StartsWith(Folder, StringComparison.Ordinal)).Select(Read).OrderBy(p => p.Bed).Select(p => p.Preset)];

    private static (double Bed, MachinePreset Preset) Read(string resource)
    {
        using Stream stream = typeof(MachinePresets).Assembly.GetManifestResourceStream(resource)!;
        PresetFile file = JsonSerializer.Deserialize<PresetFile>(stream, JsonSerializerOptions.Web) ?? throw new InvalidDataException($"{resource} is empty.");
        return (file.Machine.GetProperty("bed").GetProperty("x").GetDouble(), new(file.Machine.GetProperty("name").GetString()!, file.Source, file.Machine.GetRawText()));
    }

    private sealed record PresetFile(string Source, JsonElement Machine);
}

/// <summary>A machine to start from.</summary>
/// <param name="Name">As in its document.</param>
/// <param name="Source">Where its numbers come from.</param>
/// <param name="Text">Its document (JSON).</param>
public sealed record MachinePreset(string Name, string Source, string Text)
{
    /// <summary>What it is like, in a few words.</summary>
    public string Purpose => MachineTexts.Get("preset." + Name);
}
