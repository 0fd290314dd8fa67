using System.Text.RegularExpressions;

namespace MarkReader.Application.Inputs;

/// <summary>Reads two numbers: as X,Y with points before decimals, or apart by a blank or a semicolon.</summary>
internal static partial class PairText
{
    /// <summary>The two finite numbers, or null.</summary>
    public static (double X, double Y)? Read(string text)
    {
        string[] parts = Between().Split(text.Trim());
        return parts.Length == 2 && NumberText.Read(parts[0]).TryGet(out Number? x, out _) && NumberText.Read(parts[1]).TryGet(out Number? y, out _)
            && double.IsFinite(x.Value) && double.IsFinite(y.Value)
            ? (x.Value, y.Value)
            : null;
    }

    /// <summary>A text as messages show it.</summary>
    public static string Shown(string text) => text.Length > 30 ? text[..30] + "..." : text;

    [GeneratedRegex(@"\s*[;\s]\s*|,\s*", RegexOptions.CultureInvariant)]
    private static partial Regex Between();
}
