using MarkReader.Application.Aiming;
using MarkReader.Application.Measuring;
using MarkReader.Quantities;

namespace MarkReader.CommandLine.Output;

/// <summary>What to do about a refusal where a page's user would tap the photo: here an option names the place.</summary>
internal static class OptionHints
{
    private static readonly Dictionary<FailureCode, string> s_hints = new()
    {
        [MeasurePhoto.NoMarkCode] = "hint.noMark",
        [AimFailures.NearMarkUnclear] = "hint.nearMarkUnclear",
        [AimFailures.FarMarkUnclear] = "hint.farMarkUnclear",
        [AimFailures.TwoMarksNeeded] = "hint.twoMarksNeeded",
    };

    /// <summary>The refusal with the option that helps, or as it was.</summary>
    public static Failure Of(Failure failure) => s_hints.TryGetValue(failure.Code, out string? hint) ? failure with { Hint = OutputTexts.Get(hint) } : failure;
}
