using System.Globalization;
using MarkReader.Imaging.Marks;
using MarkReader.Imaging.Pipeline;
using static MarkReader.Quantities.Texts<MarkReader.CommandLine.Output.OutputTexts>;

namespace MarkReader.CommandLine.Output;

/// <summary>A measured photo for people.</summary>
internal static class MeasureText
{
    public static string Of(PhotoMeasurement measurement)
    {
        CardSighting card = measurement.Card;
        Table table = new(Get("measure.mark"), "u/mm", "v/mm", Get("measure.regionMm"), Get("measure.diameterMm"));
        int number = 0;
        foreach (Mark mark in measurement.Marks)
            table.Add($"{++number}", Words.Place(mark.Centre.Point.U), Words.Place(mark.Centre.Point.V), Words.Region95(mark.Centre.Covariance), Words.Fixed(mark.Diameter.Millimetres, 2));
        string[] lines =
        [
            Say("measure.cardMarkersPxMm", card.Kind, card.MarkersSeen, Words.Fixed(card.PixelsPerMm, 1), Words.Fixed(card.Tilt.Degrees, 0), Words.Fixed(card.ResidualPx, 2)),
            QualityText.Of(Get("measure.photo"), measurement.Quality),
            .. Words.Camera(measurement),
            table.ToString(),
            Words.Region,
            BudgetText.Of([.. measurement.Marks.Select((m, i) => (Say("measure.mark2", i + 1), m.Budget))]),
            Words.Budget,
            .. Words.Of(measurement.Warnings),
            .. Doubtful(measurement.Doubtful),
        ];
        return string.Join(Environment.NewLine, lines);
    }

    /// <summary>Spots that the photo leaves open, with the option that measures each.</summary>
    private static IEnumerable<string> Doubtful(IReadOnlyList<DoubtfulSpot> spots)
    {
        if (spots.Count == 0)
            yield break;
        Table table = new(Get("measure.mayBeAMark"), "u/mm", "v/mm", Get("measure.diameterMm"), Get("measure.becauseOf"));
        foreach (DoubtfulSpot spot in spots)
        {
            string place = string.Create(CultureInfo.InvariantCulture, $"--at {spot.Photo.X:0},{spot.Photo.Y:0}");
            table.Add(place, Words.Fixed(spot.Centre.U, 1), Words.Fixed(spot.Centre.V, 1), Words.Fixed(spot.Diameter.Millimetres, 1), spot.Reason);
        }

        yield return table.ToString();
    }
}
