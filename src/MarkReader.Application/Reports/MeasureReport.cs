using MarkReader.Imaging.Marks;
using MarkReader.Imaging.Pipeline;
using MarkReader.Imaging.Rectification;

namespace MarkReader.Application.Reports;

/// <summary>The JSON of a measured photo.</summary>
/// <param name="Marks">Sorted by u.</param>
/// <param name="Quality">How good the photo is; null in results of earlier versions.</param>
/// <param name="Doubtful">Dark spots that may be marks; null in results of earlier versions.</param>
/// <param name="Projection">How the card lies in the photo; null in results of earlier versions.</param>
public sealed record MeasureReport(
    PhotoReport Photo,
    CardReport Card,
    IReadOnlyList<MarkReport> Marks,
    IReadOnlyList<WarningReport> Warnings,
    QualityReport? Quality,
    IReadOnlyList<SpotReport>? Doubtful,
    ProjectionReport? Projection = null)
{
    public static MeasureReport From(PhotoMeasurement measurement) => new(
        new(measurement.Photo.Width, measurement.Photo.Height, measurement.CameraProfile),
        new(
            measurement.Card.Kind,
            measurement.Card.MarkersSeen,
            measurement.Card.PixelsPerMm,
            measurement.Card.Tilt.Degrees,
            measurement.Card.ResidualPx),
        [.. measurement.Marks.OrderBy(m => m.Centre.Point.U).Select(MarkReport.From)],
        WarningReport.From(measurement.Warnings),
        QualityReport.From(measurement.Quality),
        [.. measurement.Doubtful.Select(SpotReport.From)],
        ProjectionReport.From(measurement));
}

/// <summary>From the card frame to the photo, so that something can be drawn over the photo later.</summary>
/// <param name="ZoneSide">Side of the card's free zone, mm.</param>
/// <param name="Camera">The numbers of the projection; they are read by the version that wrote them and by later ones.</param>
public sealed record ProjectionReport(double ZoneSide, CardProjectionData Camera)
{
    internal static ProjectionReport? From(PhotoMeasurement measurement) =>
        CardProjectionData.Of(measurement.Projection) is { } data ? new(measurement.Card.ZoneSide.Millimetres, data) : null;
}

/// <summary>Size as displayed, px.</summary>
/// <param name="CameraProfile">Name of the camera profile that was used; null for none.</param>
public sealed record PhotoReport(int Width, int Height, string? CameraProfile = null);

/// <summary>The card that was found.</summary>
public sealed record CardReport(string Kind, int MarkersSeen, double PixelsPerMm, double TiltDegrees, double ResidualPx);

/// <summary>A dark spot that may be a mark.</summary>
/// <param name="U">Rough centre, mm.</param>
/// <param name="X">Centre in the photo, px.</param>
/// <param name="Diameter">Rough diameter, mm.</param>
/// <param name="Reason">What speaks against a mark.</param>
public sealed record SpotReport(double U, double V, double X, double Y, double Diameter, string Reason)
{
    internal static SpotReport From(DoubtfulSpot spot) => new(spot.Centre.U, spot.Centre.V, spot.Photo.X, spot.Photo.Y, spot.Diameter.Millimetres, spot.Reason);
}
