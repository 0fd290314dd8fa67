using System.Globalization;
using MarkReader.Imaging.Rectification;
using MarkReader.Imaging.Texts;
using MarkReader.Quantities;

namespace MarkReader.Imaging.Pipeline;

/// <summary>Whether the places that the user names can be marks at all.</summary>
internal static class TapCheck
{
    private static string Hint => ImagingTexts.Get("tapCheck.giveMiddleMarkInPhoto");

    /// <summary>The first place outside the photo, as a refusal; null when there is none.</summary>
    public static Failure? Outside(PhotoSize photo, IEnumerable<PixelPoint> taps)
    {
        foreach (PixelPoint tap in taps)
        {
            // Written so that NaN is outside.
            if (!(tap.X >= 0 && tap.Y >= 0 && tap.X <= photo.Width - 1 && tap.Y <= photo.Height - 1))
                return new(TapFailures.OutsidePhoto, ImagingTexts.Word("tapCheck.placeNotInPhotoX", Text(tap), photo.Width, photo.Height), Hint);
        }

        return null;
    }

    /// <summary>The first place outside the card's free zone, as a refusal; null when there is none.</summary>
    public static Failure? Outside(RegisteredCard card, IEnumerable<PixelPoint> taps)
    {
        double half = card.Kind.ZoneSide / 2;
        foreach (PixelPoint tap in taps)
        {
            CardPoint p = card.View.ToCard(tap);
            if (!(Math.Abs(p.U) <= half && Math.Abs(p.V) <= half))
                return new(TapFailures.OutsideZone, ImagingTexts.Word("tapCheck.placeNotInCardFree", Text(tap)), Hint);
        }

        return null;
    }

    private static string Text(PixelPoint p) => string.Create(CultureInfo.InvariantCulture, $"{Text(p.X)}, {Text(p.Y)}");

    // A mistyped exponent would print a hundred digits.
    private static string Text(double x) => x.ToString(Math.Abs(x) < 1e6 ? "0.#" : "G3", CultureInfo.InvariantCulture);
}
