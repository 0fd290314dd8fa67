using System.Globalization;
using MarkReader.Application.Texts;
using MarkReader.Imaging.Marks;
using MarkReader.Imaging.Pipeline;
using MarkReader.Quantities;

namespace MarkReader.Application.Measuring;

/// <summary>The marks of one photo.</summary>
public static class MeasurePhoto
{
    /// <summary>The card was measured and there is no mark in its free zone.</summary>
    public static readonly FailureCode NoMarkCode = new("NO_MARK", FailureKind.NotMeasurable);

    /// <summary>A mark farther than this from the place that was named, in mm and beyond its own half diameter, is another one.</summary>
    private const double TapReach = 2;

    /// <summary>A fit that is darker than its surroundings by less than this part is the tape's texture, not a mark.</summary>
    private const double LeastContrast = 0.05;

    /// <summary>Places of doubtful spots that a refusal lists.</summary>
    private const int MostPlaces = 4;

    /// <summary>Measures one photo; a photo without a mark, or a named place without one, is a refusal. Calls may run at the same time.</summary>
    public static Outcome<PhotoMeasurement> Run(ReadOnlyMemory<byte> photo, MeasureOptions? options = null)
    {
        if (!PhotoMeasurer.Measure(photo, options).TryGet(out PhotoMeasurement? measurement, out Failure? failure))
            return failure;
        HashSet<Mark> named = [];
        foreach (PixelPoint tap in options?.Taps ?? [])
        {
            if (At(measurement, tap) is not { } mark)
                return NothingAt(tap);
            if (!named.Add(mark))
                return new Failure(ReadingFailures.SameMarkNamed, InputTexts.Get("measurePhoto.twoPlacesNamedInPhoto"), InputTexts.Get("measurePhoto.nameMiddleEachMarkOnce"));
        }

        return measurement.Marks.Count == 0 ? NoMark("", measurement.Doubtful) : measurement;
    }

    /// <summary>The mark at a place that was named, or null.</summary>
    internal static Mark? At(PhotoMeasurement measurement, PixelPoint tap)
    {
        CardPoint place = measurement.Projection.ToCard(tap);
        return measurement.Marks.Where(m => m.Shape.Contrast >= LeastContrast).MinBy(m => m.Photo.DistanceTo(tap)) is { } mark
            && mark.Centre.Point.DistanceTo(place) <= TapReach + (mark.Diameter.Millimetres / 2) ? mark : null;
    }

    internal static Failure NothingAt(PixelPoint tap) => new(
        ReadingFailures.NothingThere,
        InputTexts.Say("measurePhoto.nothingAtInPhotoCan", tap.X, tap.Y),
        InputTexts.Get("measurePhoto.tapMiddleMarkNotPen"));

    internal static Failure NoMark(string photo, IReadOnlyList<DoubtfulSpot> doubtful) => new(
        NoMarkCode,
        InputTexts.Say("measurePhoto.noMarkSeenInCard", photo) + doubtful.Count switch
        {
            0 => "",
            1 => InputTexts.Say("measurePhoto.butSpotThatMayBe", Places(doubtful)),
            _ => InputTexts.Say("measurePhoto.butSpotsThatMayBe", doubtful.Count, Places(doubtful)),
        },
        doubtful.Count == 0
            ? InputTexts.Get("measurePhoto.checkThatPulseLeftMark")
            : InputTexts.Get("measurePhoto.tapMarkInPhotoOn"));

    /// <summary>The places of the first spots in the photo, as the options that name a mark take them.</summary>
    private static string Places(IReadOnlyList<DoubtfulSpot> spots) =>
        string.Join(InputTexts.Get("measurePhoto.and"), spots.Take(MostPlaces).Select(s => string.Create(CultureInfo.InvariantCulture, $"{s.Photo.X:0},{s.Photo.Y:0}"))) + (spots.Count > MostPlaces ? InputTexts.Get("measurePhoto.andOthers") : "");
}
