using System.Text.RegularExpressions;
using MarkReader.Quantities;

namespace MarkReader.Application.Inputs;

/// <summary>Reads a place in a photo: x and y in pixels, as X,Y with points before decimals, or apart by a blank or a semicolon.</summary>
public static partial class PlaceText
{
    /// <summary>The text does not hold two numbers.</summary>
    public static readonly FailureCode Unreadable = new("PLACE_UNREADABLE", FailureKind.BadInput);

    public static Outcome<Place> Read(string text)
    {
        string[] parts = Between().Split(text.Trim());
        if (parts.Length == 2 && NumberText.Read(parts[0]).TryGet(out Number? x, out _) && NumberText.Read(parts[1]).TryGet(out Number? y, out _)
            && double.IsFinite(x.Value) && double.IsFinite(y.Value))
            return new Place(new(x.Value, y.Value));
        return new Failure(
            Unreadable,
            $"'{(text.Length > 30 ? text[..30] + "..." : text)}' is not a place in a photo",
            "write x and y in pixels with a comma between, like 1520,980.5");
    }

    [GeneratedRegex(@"\s*[;\s]\s*|,\s*", RegexOptions.CultureInvariant)]
    private static partial Regex Between();
}

/// <summary>A place that was read.</summary>
public sealed record Place(PixelPoint Photo);
