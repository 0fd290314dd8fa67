using System.Text.Json.Serialization;
using MarkReader.Application.Auditing;

namespace MarkReader.Application.Reports;

/// <summary>The JSON of an audit: every photo, the figures over all, and those of each kind of scene.</summary>
public sealed record AuditReport(IReadOnlyList<AuditPhotoReport> Photos, AuditSummary Summary, IReadOnlyList<AuditKind> Kinds)
{
    public static AuditReport From(Audit audit) => new([.. audit.Photos.Select(AuditPhotoReport.From)], audit.Summary, audit.Kinds);
}

/// <summary>One photo of an audit.</summary>
/// <param name="Kind">Kind of scene, "-" when the truth file names none.</param>
/// <param name="Expected">Code of the refusal that the truth file asks for, or null.</param>
/// <param name="Refusal">Code of the refusal that was given, or null.</param>
/// <param name="CameraProfile">Name of the camera's profile with which the photo was measured, or null.</param>
/// <param name="CameraNotUsed">Why the camera's profile was not used, or null.</param>
public sealed record AuditPhotoReport(
    string Name, string Kind, bool AsExpected, int Found, int Missed, int False, string? Expected, ErrorBody? Refusal, string? CameraProfile, string? CameraNotUsed, IReadOnlyList<AuditErrorReport> Errors)
{
    internal static AuditPhotoReport From(AuditedPhoto photo) => new(
        photo.Name,
        photo.Kind,
        photo.AsExpected,
        photo.Found.Count,
        photo.Missed,
        photo.False,
        photo.Truth?.ExpectedError,
        photo.Refusal is null ? null : ErrorReport.From(photo.Refusal).Error,
        photo.CameraProfile,
        photo.CameraNotUsed,
        [.. photo.Found.Select(AuditErrorReport.From)]);
}

/// <summary>Measured minus true, mm, and whether the stated 95 % region holds the truth.</summary>
/// <param name="Sigma">The stated standard uncertainty of the distance, mm.</param>
/// <param name="Mahalanobis">The distance in units of the stated covariance, √(dᵀC⁻¹d).</param>
public sealed record AuditErrorReport(
    double TrueU,
    double TrueV,
    double DU,
    double DV,
    double Distance,
    double Sigma,
    bool Covered,
    [property: JsonNumberHandling(JsonNumberHandling.AllowNamedFloatingPointLiterals)] double Mahalanobis)
{
    internal static AuditErrorReport From(MatchedMark match) => new(
        match.Truth.U,
        match.Truth.V,
        match.Error.U,
        match.Error.V,
        match.Error.Magnitude,
        Math.Sqrt(match.Mark.Centre.Covariance.Uu + match.Mark.Centre.Covariance.Vv),
        match.Covered,
        match.Mahalanobis);
}
