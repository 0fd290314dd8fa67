using System.Text.Json;
using MarkReader.Application.Measuring;
using MarkReader.Quantities;

namespace MarkReader.Application.Auditing;

/// <summary>What is true of a photo.</summary>
/// <param name="Marks">True centres in the card frame.</param>
/// <param name="ExpectedError">Code of the refusal that is right for the photo, or null.</param>
/// <param name="Kind">Kind of scene, <see cref="NoKind"/> when none is named.</param>
public sealed record Truth(IReadOnlyList<CardPoint> Marks, string? ExpectedError, string Kind = Truth.NoKind)
{
    /// <summary>What a user measured of the print and the tape; it goes into the measurement.</summary>
    public CardInput Measured { get; init; } = CardInput.Nothing;

    /// <summary>Stands for the kind of a photo whose truth file names none.</summary>
    public const string NoKind = "-";
}

/// <summary>Reads NAME.truth.json: {"marks": [{"u", "v"}], "expected": {"error"}, "scene": {"kind"}, "measured": {"rulerU", "rulerV", "rulerUncertainty", "tapeHeight", "tapeHeightUncertainty"}}; everything else in it is ignored.</summary>
public static class TruthFile
{
    public const string Ending = ".truth.json";

    /// <summary>A longer kind would spoil tables and plots, characters.</summary>
    private const int LongestKind = 40;

    public static Outcome<Truth> Parse(string name, ReadOnlyMemory<byte> bytes)
    {
        try
        {
            using JsonDocument document = JsonDocument.Parse(bytes);
            JsonElement root = document.RootElement;
            string? expected = root.TryGetProperty("expected", out JsonElement e) && e.ValueKind == JsonValueKind.Object ? e.GetProperty("error").GetString() : null;
            string kind = Kind(root);
            CardInput measured = root.TryGetProperty("measured", out JsonElement m) ? m.Deserialize<CardInput>(JsonSerializerOptions.Web) ?? CardInput.Nothing : CardInput.Nothing;
            if (!measured.ApplyTo(new()).TryGet(out _, out Failure? wrong))
                return Unreadable(name, wrong.Message);
            if (!root.TryGetProperty("marks", out JsonElement marks))
                return expected is not null ? new Truth([], expected, kind) { Measured = measured } : Unreadable(name, AuditTexts.Get("truthFile.hasNoMarks"));
            return new Truth([.. marks.EnumerateArray().Select(p => new CardPoint(p.GetProperty("u").GetDouble(), p.GetProperty("v").GetDouble()))], expected, kind) { Measured = measured };
        }
        catch (JsonException e)
        {
            return Unreadable(name, AuditTexts.Say("truthFile.notJsonAtLine", (e.LineNumber ?? 0) + 1));
        }
        catch (Exception e) when (e is InvalidOperationException or KeyNotFoundException or FormatException)
        {
            return Unreadable(name, AuditTexts.Get("truthFile.marksNotListUV"));
        }
    }

    /// <summary>The scene is its maker's own note: one that is not understood names no kind, it is not an error.</summary>
    private static string Kind(JsonElement root) =>
        root.TryGetProperty("scene", out JsonElement scene) && scene.ValueKind == JsonValueKind.Object
        && scene.TryGetProperty("kind", out JsonElement kind) && kind.ValueKind == JsonValueKind.String
        && kind.GetString()!.Trim() is { Length: > 0 and <= LongestKind } text && !text.Any(char.IsControl)
            ? text
            : Truth.NoKind;

    private static Failure Unreadable(string name, string reason) => new(
        AuditFailures.TruthUnreadable, AuditTexts.Word("truthFile.cannotBeUsed", name, reason), AuditTexts.Get("truthFile.writeAsMarksUV"));
}
