using System.Globalization;
using System.Text.Json;
using MarkReader.Application.Machines;
using MarkReader.Application.Reports;

namespace MarkReader.Service.Api.Answers;

/// <summary>A machine that is kept.</summary>
/// <param name="Id">Its number.</param>
/// <param name="Name">The name in its document, else "machine" and its number.</param>
/// <param name="Version">Counts changes; the ETag.</param>
/// <param name="AddedAt">When it came in.</param>
/// <param name="ChangedAt">When it last changed.</param>
/// <param name="Machine">Its document, as under machine in a visit file: mm and degrees.</param>
/// <param name="File">Address of the document alone, as it was given.</param>
/// <param name="Warnings">What in the document was not used or does not agree, and whether the same document is kept twice.</param>
internal sealed record MachineAnswer(
    long Id, string Name, long Version, DateTimeOffset AddedAt, DateTimeOffset ChangedAt, JsonElement Machine, string File, IReadOnlyList<WarningReport> Warnings)
{
    public static MachineAnswer From(KeptMachine kept, MachineEntry? same = null)
    {
        MachineEntry entry = kept.Entry;
        return new(
            entry.Id,
            entry.Name,
            entry.Version,
            entry.AddedAt,
            entry.ChangedAt,
            JsonSerializer.Deserialize<JsonElement>(kept.Text),
            Address(entry.Id) + "/file",
            WarningReport.From([.. kept.Warnings, .. same is null ? [] : new[] { MachineStore.SameAs(same) }]));
    }

    public static string Address(long id) => string.Create(CultureInfo.InvariantCulture, $"/api/machines/{id}");
}

/// <summary>A page of machines, newest first.</summary>
/// <param name="Machines">The machines, without their documents.</param>
/// <param name="Next">Address of the next page, or null.</param>
internal sealed record MachineList(IReadOnlyList<MachineEntry> Machines, string? Next);

/// <summary>Machines to start from.</summary>
internal sealed record PresetList(IReadOnlyList<PresetAnswer> Presets);

/// <summary>A machine to start from.</summary>
/// <param name="Name">By its size.</param>
/// <param name="Purpose">What it is like.</param>
/// <param name="Source">Where its numbers come from.</param>
/// <param name="Machine">Its document: change what is different on the machine, and send it to /api/machines.</param>
internal sealed record PresetAnswer(string Name, string Purpose, string Source, JsonElement Machine)
{
    public static PresetAnswer From(MachinePreset preset) => new(preset.Name, preset.Purpose, preset.Source, JsonSerializer.Deserialize<JsonElement>(preset.Text));
}
