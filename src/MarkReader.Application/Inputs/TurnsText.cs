using System.Globalization;
using System.Text.RegularExpressions;

namespace MarkReader.Application.Inputs;

/// <summary>Reads a part of a turn as people write it: 1/8, -3/16, 1 1/8, 0.25, each with cw or ccw behind it.</summary>
public static partial class TurnsText
{
    /// <summary>The turns, clockwise positive; null when the text is none.</summary>
    public static double? Read(string text)
    {
        Match match = Parts().Match(text.Trim());
        if (!match.Success)
            return null;
        double whole = match.Groups["whole"] is { Success: true } w ? double.Parse(w.Value.Replace(',', '.'), CultureInfo.InvariantCulture) : 0;
        double part = match.Groups["over"] is { Success: true } over ? double.Parse(over.Value, CultureInfo.InvariantCulture) / double.Parse(match.Groups["under"].Value, CultureInfo.InvariantCulture) : 0;
        double turns = whole + part;
        bool counter = match.Groups["sign"].Value is "-" or "−" ^ match.Groups["way"].Value is "ccw" or "counter-clockwise";
        return double.IsFinite(turns) ? counter ? -turns : turns : null;
    }

    [GeneratedRegex(@"^(?<sign>[+−-])?(?:(?<whole>[0-9]{1,9}(?:[.,][0-9]{1,6})?)(?: (?<over>[0-9]{1,3})/(?<under>[0-9]{1,3}))?|(?<over>[0-9]{1,3})/(?<under>[0-9]{1,3}))(?: (?<way>cw|ccw|clockwise|counter-clockwise))?$", RegexOptions.CultureInvariant)]
    private static partial Regex Parts();
}
