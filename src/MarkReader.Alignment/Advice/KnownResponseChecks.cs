using MarkReader.Alignment.Estimates;
using MarkReader.Alignment.Screws;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Advice;

/// <summary>Checks of responses from an earlier visit.</summary>
internal static class KnownResponseChecks
{
    private const string Hint = "give for each screw once the mrad per turn along u and v, and their standard uncertainty, as an earlier visit reported them";

    /// <param name="screws">The frame's screws.</param>
    /// <param name="known">The responses.</param>
    /// <returns>The first thing that is wrong, or null.</returns>
    public static Failure? All(IReadOnlyList<string> screws, IReadOnlyList<KnownResponse> known)
    {
        foreach (KnownResponse k in known)
        {
            if (!screws.Contains(k.Screw))
                return new(AdviceFailures.ScrewUnknown, "a known response is that of a screw that the frame does not have", $"the frame's screws are {string.Join(", ", screws)}");
            double size = Math.Sqrt((k.U * k.U) + (k.V * k.V));
            if (!(size >= 0.1 && size <= 1000 && k.Uncertainty >= 1e-3 && k.Uncertainty <= 0.5 * size))
                return new(AdviceFailures.KnownResponseInvalid, $"the known response of screw {k.Screw} is ({InputChecks.Text(k.U)}, {InputChecks.Text(k.V)}) mrad per turn with the uncertainty {InputChecks.Text(k.Uncertainty)}", Hint);
        }

        return known.DistinctBy(k => k.Screw).Count() == known.Count
            ? null
            : new(AdviceFailures.KnownResponseInvalid, "two known responses are given for one screw", Hint);
    }
}
