using MarkReader.Application.Measuring;
using MarkReader.Imaging.Fiducials;
using MarkReader.Quantities;

namespace MarkReader.Service.Uploads;

/// <summary>The fields of forms for what was measured of the printed card and the tape.</summary>
internal static class CardFields
{
    public static IReadOnlyList<string> Names { get; } = ["rulerU", "rulerV", "rulerUncertainty", "tapeHeight", "tapeHeightUncertainty"];

    /// <summary>What they say; a form always sends the uncertainties, which say nothing without their lengths.</summary>
    /// <param name="millimetres">Of a field; null when it is blank.</param>
    public static CardInput Read(Func<string, double?> millimetres)
    {
        CardInput input = new(millimetres("rulerU"), millimetres("rulerV"), millimetres("rulerUncertainty"), millimetres("tapeHeight"), millimetres("tapeHeightUncertainty"));
        if (input is { RulerU: null, RulerV: null })
            input = input with { RulerUncertainty = null };
        return input.TapeHeight is null ? input with { TapeHeightUncertainty = null } : input;
    }

    /// <summary>The field that a refusal concerns; null when it concerns none of them.</summary>
    public static string? Of(FailureCode code, CardInput input)
    {
        if (code == ReadingFailures.RulerUncertaintyInvalid)
            return "rulerUncertainty";
        if (code == ReadingFailures.TapeHeightInvalid || code == ReadingFailures.TapeHeightMissing)
            return "tapeHeight";
        if (code == ReadingFailures.TapeHeightUncertaintyInvalid)
            return "tapeHeightUncertainty";
        if (code == ReadingFailures.RulerMissing)
            return input.RulerU is null ? "rulerU" : "rulerV";
        if (code == ReadingFailures.RulerInvalid)
            return input.RulerU is > 0 and <= CardInput.LongestRuler ? "rulerV" : "rulerU";
        return code == CardFailures.RulerReading ? "rulerU" : null;
    }
}
