using MarkReader.Application.Texts;
using MarkReader.Quantities;

namespace MarkReader.Application.Inputs;

/// <summary>Reads a place in a photo: x and y in pixels, as X,Y with points before decimals, or apart by a blank or a semicolon.</summary>
public static class PlaceText
{
    /// <summary>The text does not hold two numbers.</summary>
    public static readonly FailureCode Unreadable = new("PLACE_UNREADABLE", FailureKind.BadInput);

    public static Outcome<Place> Read(string text) => PairText.Read(text) is { } pair
        ? new Place(new(pair.X, pair.Y))
        : new Failure(Unreadable, InputTexts.Word("placeText.notPlaceInPhoto", PairText.Shown(text)), InputTexts.Get("placeText.writeXAndYIn"));
}

/// <summary>A place that was read.</summary>
public sealed record Place(PixelPoint Photo);
