using System.Text.Json;
using MarkReader.Imaging.Quality;

namespace MarkReader.Application.Reports;

/// <summary>The JSON of a photo's quality.</summary>
/// <param name="PixelsPerMm">Scale at the card's centre.</param>
/// <param name="TiltDegrees">Angle between the card's normal and the line of sight.</param>
/// <param name="BlurPx">Standard deviation of the blur of printed edges, px.</param>
/// <param name="PaperLight">Light of white paper, 0 to 1, linear.</param>
/// <param name="ClippedShare">Part of the card that is as bright as the photo can hold.</param>
/// <param name="Noise">Standard deviation of one pixel of the free zone, relative to its light.</param>
/// <param name="GlareShare">Part of the free zone that is washed out.</param>
/// <param name="GlareSide">Where in the photo most of it lies: left, right, upper, lower, middle; null without glare.</param>
/// <param name="Unevenness">1 − darkest over brightest of the card's white paper.</param>
/// <param name="ShadowStep">Light on the dark side of a shadow's edge over that on its bright side; 1 without one.</param>
/// <param name="MarkersSeen">Markers recognised.</param>
/// <param name="MarkersTotal">Markers printed.</param>
/// <param name="ResidualPx">Distance of the printed edges from their fitted places, px.</param>
public sealed record QualityReport(
    double PixelsPerMm,
    double TiltDegrees,
    double BlurPx,
    double PaperLight,
    double ClippedShare,
    double Noise,
    double GlareShare,
    string? GlareSide,
    double Unevenness,
    double ShadowStep,
    int MarkersSeen,
    int MarkersTotal,
    double ResidualPx)
{
    public static QualityReport From(PhotoQuality quality) => new(
        quality.PixelsPerMm,
        quality.Tilt.Degrees,
        quality.BlurPx,
        quality.PaperLight,
        quality.ClippedShare,
        quality.Noise,
        quality.Glare.Share,
        quality.Glare.Share > 0 ? JsonNamingPolicy.CamelCase.ConvertName(quality.Glare.Side.ToString()) : null,
        quality.Unevenness,
        quality.ShadowStep,
        quality.MarkersSeen,
        quality.MarkersTotal,
        quality.ResidualPx);
}
