using MarkReader.Alignment.Estimates;
using MarkReader.Alignment.Screws;
using MarkReader.Alignment.Texts;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Advice;

/// <summary>Checks of responses from an earlier visit.</summary>
internal static class KnownResponseChecks
{
    private static string Hint => AlignmentTexts.Get("knownResponseChecks.giveForEachScrewOnce");

    /// <param name="screws">The frame's screws.</param>
    /// <param name="known">The responses.</param>
    /// <returns>The first thing that is wrong, or null.</returns>
    public static Failure? All(IReadOnlyList<string> screws, IReadOnlyList<KnownResponse> known)
    {
        foreach (KnownResponse k in known)
        {
            if (!screws.Contains(k.Screw))
                return new(AdviceFailures.ScrewUnknown, AlignmentTexts.Get("knownResponseChecks.knownResponseThatScrewThat"), AlignmentTexts.Word("knownResponseChecks.frameScrews", string.Join(", ", screws)));
            double size = Math.Sqrt((k.U * k.U) + (k.V * k.V));
            if (!(size >= 0.1 && size <= 1000 && k.Uncertainty >= 1e-3 && k.Uncertainty <= 0.5 * size))
                return new(AdviceFailures.KnownResponseInvalid, AlignmentTexts.Word("knownResponseChecks.knownResponseScrewMradPer", k.Screw, InputChecks.Text(k.U), InputChecks.Text(k.V), InputChecks.Text(k.Uncertainty)), Hint);
        }

        return known.DistinctBy(k => k.Screw).Count() == known.Count
            ? null
            : new(AdviceFailures.KnownResponseInvalid, AlignmentTexts.Get("knownResponseChecks.twoKnownResponsesGivenFor"), Hint);
    }
}
