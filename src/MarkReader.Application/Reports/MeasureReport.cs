using MarkReader.Imaging.Pipeline;

namespace MarkReader.Application.Reports;

/// <summary>The JSON of a measured photo.</summary>
/// <param name="Marks">Sorted by u.</param>
public sealed record MeasureReport(PhotoReport Photo, CardReport Card, IReadOnlyList<MarkReport> Marks, IReadOnlyList<WarningReport> Warnings)
{
    public static MeasureReport From(PhotoMeasurement measurement) => new(
        new(measurement.Photo.Width, measurement.Photo.Height),
        new(
            measurement.Card.Kind,
            measurement.Card.MarkersSeen,
            measurement.Card.PixelsPerMm,
            measurement.Card.Tilt.Degrees,
            measurement.Card.ResidualPx),
        [.. measurement.Marks.OrderBy(m => m.Centre.Point.U).Select(MarkReport.From)],
        WarningReport.From(measurement.Warnings));
}

/// <summary>Size as displayed, px.</summary>
public sealed record PhotoReport(int Width, int Height);

/// <summary>The card that was found.</summary>
public sealed record CardReport(string Kind, int MarkersSeen, double PixelsPerMm, double TiltDegrees, double ResidualPx);
