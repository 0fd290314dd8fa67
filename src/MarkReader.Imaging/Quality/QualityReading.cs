using MarkReader.Imaging.Photos;
using MarkReader.Imaging.Pipeline;
using MarkReader.Imaging.Rectification;
using MarkReader.Quantities;

namespace MarkReader.Imaging.Quality;

/// <summary>Puts the quality of a photo together, from the photo, the registered card and the rectified zone.</summary>
internal static class QualityReading
{
    public static PhotoQuality Of(GreyPhoto photo, RegisteredCard card, CardSighting sighting, ZoneMap light)
    {
        PaperLight paper = PaperLight.Of(photo, card);
        ZoneLight zone = new(light, card.Kind.ZoneSide);
        return new(
            sighting.PixelsPerMm,
            sighting.Tilt,
            BlurMeter.Measure(photo, card),
            paper.Median,
            PaperLight.ClippedShare(photo, card),
            Noise(photo, card),
            zone.Glare(paper, card.View),
            paper.Unevenness,
            zone.ShadowStep(paper),
            sighting.MarkersSeen,
            card.Kind.Markers.Count,
            sighting.ResidualPx);
    }

    /// <summary>From differences of neighbouring pixels of the free zone over their mean, without the largest tenth, which marks and lines make: as a standard deviation of one pixel.</summary>
    private static double Noise(GreyPhoto photo, RegisteredCard card)
    {
        const int Steps = 60;
        const double MeanOverSigma = 0.657; // mean size of a normal variable when the tenth of largest size is left out
        PixelSampler pixels = new(photo.Pixels);
        List<double> differences = [];
        for (int i = 0; i < Steps * Steps; i++)
        {
            double side = card.Kind.ZoneSide;
            PixelPoint p = card.View.ToPhoto(new((((i % Steps) + 0.5) / Steps * side) - (side / 2), (((i / Steps) + 0.5) / Steps * side) - (side / 2)));
            // On pixel centres: between them the interpolation smooths.
            (double x, double y) = (Math.Round(p.X), Math.Round(p.Y));
            if (!pixels.Contains(x, y) || !pixels.Contains(x + 1, y))
                continue;
            double a = pixels[x, y], b = pixels[x + 1, y];
            if (a + b > 0)
                differences.Add(Math.Abs(a - b) / ((a + b) / 2));
        }

        return differences.Count == 0 ? 0 : differences.Order().Take(Math.Max(1, differences.Count * 9 / 10)).Average() / MeanOverSigma / Math.Sqrt(2);
    }
}
