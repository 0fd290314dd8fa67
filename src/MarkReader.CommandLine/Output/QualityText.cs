using MarkReader.Imaging.Quality;
using static MarkReader.Quantities.Texts<MarkReader.CommandLine.Output.OutputTexts>;

namespace MarkReader.CommandLine.Output;

/// <summary>The quality of a photo in one line.</summary>
internal static class QualityText
{
    public static string Of(string name, PhotoQuality q)
    {
        string glare = q.Glare.Share > 0 ? Say("quality.glareOn", Percent(q.Glare.Share)) : "";
        string shadow = q.ShadowStep < 1 ? Say("quality.shadowEdge", Percent(q.ShadowStep)) : "";
        return Say("quality.blurPxWhitePaper", name, Words.Fixed(q.BlurPx, 1), Percent(q.PaperLight), Percent(q.ClippedShare), Words.Fixed(100 * q.Noise, 1), glare, Percent(q.Unevenness), shadow);
    }

    private static string Percent(double share) => Words.Fixed(100 * share, 0) + " %";
}
