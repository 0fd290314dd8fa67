using MarkReader.Application.Machines;

namespace MarkReader.Service.Pages.Machines;

/// <summary>Presets as addresses name them.</summary>
internal static class PresetKey
{
    public static string Of(MachinePreset preset) => preset.Name.Replace(' ', '-');

    public static MachinePreset? Find(string? key) => MachinePresets.All.FirstOrDefault(p => Of(p) == key);
}
