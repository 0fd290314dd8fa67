using System.Globalization;
using MarkReader.Application.Reports;

namespace MarkReader.Service.Pages;

/// <summary>Words and numbers as the pages show them.</summary>
public static class Words
{
    /// <summary>A part of a line made a sentence: a capital in front, a full stop behind.</summary>
    public static string Sentence(string text) => text.Length == 0
        ? text
        : char.ToUpperInvariant(text[0]) + text[1..] + (text[^1] is '.' or '?' or '!' ? "" : ".");

    /// <summary>A number with a true minus sign and a fixed count of decimals; no sign on what rounds to zero.</summary>
    public static string Number(double value, int decimals)
    {
        string text = value.ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        return text.Trim('-', '0', '.').Length == 0 ? text.TrimStart('-') : text.Replace('-', '−');
    }

    /// <summary>Like <see cref="Number"/>, with a plus sign in front of what is above zero.</summary>
    public static string Signed(double value, int decimals)
    {
        string text = Number(value, decimals);
        return text[0] == '−' || text.Trim('0', '.').Length == 0 ? text : "+" + text;
    }

    /// <summary>A number with at most two decimals, as few as it needs.</summary>
    public static string Short(double value) => value.ToString("0.##", CultureInfo.InvariantCulture).Replace('-', '−');

    /// <summary>A number for an attribute.</summary>
    public static string Plain(double value) => value.ToString(CultureInfo.InvariantCulture);

    /// <summary>How the beam has to move on the tape: right and left along u, up and down along v, mm.</summary>
    public static string Move(double u, double v)
    {
        string along = Part(u, "right", "left");
        string across = Part(v, "up", "down");
        return (along.Length, across.Length) switch
        {
            (0, 0) => "",
            (0, _) => across,
            (_, 0) => along,
            _ => along + " and " + across,
        };
    }

    /// <summary>The quality of a photo in plain facts.</summary>
    public static string Facts(QualityReport quality)
    {
        string glare = quality.GlareShare > 0.005 ? $" · glare on {Number(100 * quality.GlareShare, 0)} %" : "";
        string clipped = quality.ClippedShare > 0.005 ? $" · {Number(100 * quality.ClippedShare, 0)} % burnt out" : "";
        return $"{Number(quality.PixelsPerMm, 0)} px/mm · seen at {Number(quality.TiltDegrees, 0)}° · blur {Number(quality.BlurPx, 1)} px · paper at {Number(100 * quality.PaperLight, 0)} % of full light · grain {Number(100 * quality.Noise, 1)} % · {quality.MarkersSeen} of {quality.MarkersTotal} markers{glare}{clipped}";
    }

    private static string Part(double value, string above, string below)
    {
        string size = Number(Math.Abs(value), 1);
        return size == "0.0" ? "" : $"{size}\u00a0mm\u00a0{(value > 0 ? above : below)}";
    }
}
