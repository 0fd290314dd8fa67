using System.Globalization;

namespace MarkReader.Service.Pages;

/// <summary>Sentences and numbers as the pages write them.</summary>
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

    /// <summary>A number for an attribute.</summary>
    public static string Plain(double value) => value.ToString(CultureInfo.InvariantCulture);
}
