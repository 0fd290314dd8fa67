using MarkReader.Imaging.Pipeline;
using MarkReader.Quantities;

namespace MarkReader.Application.Reports;

/// <summary>Where marks are in a photo and where they may be, for the user to choose from.</summary>
/// <param name="Zone">The corners of the card's free zone in the photo, from its upper left one on clockwise as the arrow points up.</param>
/// <param name="Marks">Sorted by u.</param>
public sealed record SpotsReport(PhotoReport Photo, IReadOnlyList<PlaceReport> Zone, IReadOnlyList<MarkReport> Marks, IReadOnlyList<SpotReport> Doubtful)
{
    public static SpotsReport From(PhotoMeasurement measurement)
    {
        double half = measurement.Card.ZoneSide.Millimetres / 2;
        CardPoint[] corners = [new(-half, half), new(half, half), new(half, -half), new(-half, -half)];
        return new(
            new(measurement.Photo.Width, measurement.Photo.Height),
            [.. corners.Select(measurement.Projection.ToPhoto).Select(p => new PlaceReport(p.X, p.Y))],
            [.. measurement.Marks.Select(MarkReport.From)],
            [.. measurement.Doubtful.Select(SpotReport.From)]);
    }
}

/// <summary>A place in the photo, px.</summary>
public sealed record PlaceReport(double X, double Y);
