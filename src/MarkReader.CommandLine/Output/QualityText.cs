using MarkReader.Imaging.Quality;

namespace MarkReader.CommandLine.Output;

/// <summary>The quality of a photo in one line.</summary>
internal static class QualityText
{
    public static string Of(string name, PhotoQuality q)
    {
        string glare = q.Glare.Share > 0 ? $", glare on {Percent(q.Glare.Share)}" : "";
        string shadow = q.ShadowStep < 1 ? $", shadow edge {Percent(q.ShadowStep)}" : "";
        return $"{name}: blur {Words.Fixed(q.BlurPx, 1)} px, white paper at {Percent(q.PaperLight)} of full light, clipped {Percent(q.ClippedShare)}, noise {Words.Fixed(100 * q.Noise, 1)} %{glare}, light uneven by {Percent(q.Unevenness)}{shadow}";
    }

    private static string Percent(double share) => Words.Fixed(100 * share, 0) + " %";
}
