using MarkReader.Imaging.Photos;
using MarkReader.Imaging.Pipeline;
using MarkReader.Imaging.Texts;
using MarkReader.Quantities;
using OpenCvSharp;

namespace MarkReader.Imaging.Fiducials;

/// <summary>Third stage: finds the card on reduced copies, the smallest first; the larger ones are only made when needed.</summary>
internal static class CardFinder
{
    /// <summary>Markers that must agree: three fix the plane with one to spare.</summary>
    public const int MarkersNeeded = 3;

    /// <summary>Longest side of the copies that are searched, px.</summary>
    private static readonly int[] s_sides = [1100, 2100, 4200];

    /// <summary>Below this 99th percentile of grey (0–255) a photo is called dark when no card is found in it.</summary>
    private const int DarkLevel = 60;

    /// <summary>The cards in a photo that can be measured, the best seen first; at least one.</summary>
    public static Outcome<FoundCards> Find(GreyPhoto photo, StageTrace trace)
    {
        IReadOnlyList<FoundCard> best = [];
        double last = 0;
        foreach (int side in s_sides)
        {
            double factor = Math.Min(1, (double)side / Math.Max(photo.Size.Width, photo.Size.Height));
            if (factor <= last)
                break;
            last = factor;
            using Mat reduced = Reduce(photo.Pixels, factor);
            IReadOnlyList<MarkerSighting> sightings = MarkerFinder.Find(reduced, new(factor));
            trace.Sightings(reduced, new(factor), sightings);
            IReadOnlyList<FoundCard> cards = MarkerConsensus.Group(sightings);
            if (MostMarkers(cards) > MostMarkers(best))
                best = cards;
            if (MostMarkers(best) >= MarkersNeeded)
                return InOrder(best);
        }

        return best.Count > 0 ? PartlySeen(MostMarkers(best)) : Absent(photo);
    }

    private static int MostMarkers(IReadOnlyList<FoundCard> cards) => cards.Select(c => c.Markers.Count).DefaultIfEmpty(0).Max();

    /// <summary>The one with most markers first; with as many, the larger one in the photo.</summary>
    private static FoundCards InOrder(IReadOnlyList<FoundCard> cards)
    {
        FoundCard[] usable = [.. cards.Where(c => c.Markers.Count >= MarkersNeeded).OrderByDescending(c => c.Markers.Count).ThenByDescending(Spread)];
        return new([.. usable.Select(c => c with { OtherCards = usable.Length - 1 })]);
    }

    private static double Spread(FoundCard card) => card.Markers.Sum(m => m.Corners[0].DistanceTo(m.Corners[2]));

    private static Mat Reduce(Mat pixels, double factor)
    {
        Mat reduced = new();
        if (factor < 1)
            Cv2.Resize(pixels, reduced, new Size(), factor, factor, InterpolationFlags.Area);
        else
            pixels.CopyTo(reduced);
        return reduced;
    }

    private static Failure PartlySeen(int seen) => new(
        CardFailures.PartlySeen,
        seen == 1 ? ImagingTexts.Get("cardFinder.onlyOneCardMarkersCan") : ImagingTexts.Say("cardFinder.onlyCardMarkersCanBe", seen),
        ImagingTexts.Word("cardFinder.uncoverAtLeastMarkersAnd", MarkersNeeded));

    private static Failure Absent(GreyPhoto photo)
    {
        double factor = Math.Min(1, (double)s_sides[1] / Math.Max(photo.Size.Width, photo.Size.Height));
        using Mat reduced = Reduce(photo.Pixels, factor);
        using Mat mirrored = reduced.Flip(FlipMode.Y);
        IReadOnlyList<FoundCard> cards = MarkerConsensus.Group(MarkerFinder.Find(mirrored, new(factor)));
        if (cards.Any(c => c.Markers.Count >= MarkersNeeded))
            return new(CardFailures.Mirrored, ImagingTexts.Get("cardFinder.cardMirrored"), ImagingTexts.Get("cardFinder.turnOffMirroringInCamera"));
        return Percentile99(reduced) < DarkLevel
            ? new(CardFailures.TooDark, ImagingTexts.Get("cardFinder.photoTooDarkFindCard"), ImagingTexts.Get("cardFinder.lightTargetFromSideOr"))
            : new(CardFailures.NoCard, ImagingTexts.Get("cardFinder.noCardSeenInPhoto"), ImagingTexts.Get("cardFinder.tapePrintedCardOnTarget"));
    }

    private static int Percentile99(Mat grey)
    {
        using Mat histogram = new();
        Cv2.CalcHist([grey], [0], null, histogram, 1, [256], [new Rangef(0, 256)]);
        double left = 0.01 * grey.Total();
        int level = 255;
        for (; level > 0 && left > 0; level--)
            left -= histogram.At<float>(level);
        return level;
    }
}
