using MarkReader.Application.Interim;

namespace MarkReader.CommandLine.Output;

/// <summary>An interim check for people.</summary>
internal static class InterimText
{
    public static string Of(InterimCheck check)
    {
        Table table = new(OutputTexts.Get("interim.photo"), OutputTexts.Get("interim.moved"), OutputTexts.Get("interim.ofRegion"), OutputTexts.Get("interim.verdict"));
        foreach (InterimComparison p in check.Photos)
        {
            bool compared = p.Marks.Count > 0;
            table.Add(p.Name, compared ? Words.Fixed(p.Largest, 4) : "–", compared ? Words.Fixed(100 * p.OfRegion, 0) : "–", InterimTexts.Get("verdict." + p.Verdict));
        }

        return string.Join(
            Environment.NewLine,
            table.ToString(),
            OutputTexts.Get("interim.columns"),
            OutputTexts.Say("interim.result", check.Before.Program, check.Now.Program, check.Photos.Count - check.Flagged, check.Photos.Count, Words.Fixed(check.Largest, 4)));
    }
}
