using System.Globalization;
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
                return new Failure(ReadingFailures.SameMarkNamed, "two of the places named in the photo are on the same mark", "name the middle of each mark once");
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
        string.Create(CultureInfo.InvariantCulture, $"nothing at {tap.X:0}, {tap.Y:0} in the photo can be measured as a mark"),
        "tap the middle of the mark, not a pen stroke; take the photo again when the mark is faint or blurred");

    internal static Failure NoMark(string photo, IReadOnlyList<DoubtfulSpot> doubtful) => new(
        NoMarkCode,
        $"{photo}no mark is seen in the card's free zone" + doubtful.Count switch
        {
            0 => "",
            1 => $", but a spot that may be one at {Places(doubtful)}",
            _ => $", but {doubtful.Count} spots that may be marks, at {Places(doubtful)}",
        },
        doubtful.Count == 0
            ? "check that the pulse left a mark on the tape inside the zone, and take the photo again in even light"
            : "tap the mark in the photo on the page, or name its place with --at X,Y (aim: --near-at, --far-at)");

    /// <summary>The places of the first spots in the photo, as the options that name a mark take them.</summary>
    private static string Places(IReadOnlyList<DoubtfulSpot> spots) =>
        string.Join(" and ", spots.Take(MostPlaces).Select(s => string.Create(CultureInfo.InvariantCulture, $"{s.Photo.X:0},{s.Photo.Y:0}"))) + (spots.Count > MostPlaces ? " and others" : "");
}
