using MarkReader.Application.Auditing;

namespace MarkReader.Application.Reports;

/// <summary>The JSON of an audit: every photo, then the figures over all.</summary>
public sealed record AuditReport(IReadOnlyList<AuditPhotoReport> Photos, AuditSummary Summary)
{
    public static AuditReport From(Audit audit) => new([.. audit.Photos.Select(AuditPhotoReport.From)], audit.Summary);
}

/// <summary>One photo of an audit.</summary>
/// <param name="Expected">Code of the refusal that the truth file asks for, or null.</param>
/// <param name="Refusal">Code of the refusal that was given, or null.</param>
public sealed record AuditPhotoReport(
    string Name, bool AsExpected, int Found, int Missed, int False, string? Expected, ErrorBody? Refusal, IReadOnlyList<AuditErrorReport> Errors)
{
    internal static AuditPhotoReport From(AuditedPhoto photo) => new(
        photo.Name,
        photo.AsExpected,
        photo.Found.Count,
        photo.Missed,
        photo.False,
        photo.Truth?.ExpectedError,
        photo.Refusal is null ? null : ErrorReport.From(photo.Refusal).Error,
        [.. photo.Found.Select(AuditErrorReport.From)]);
}

/// <summary>Measured minus true, mm, and whether the stated 95 % region holds the truth.</summary>
/// <param name="Sigma">The stated standard uncertainty of the distance, mm.</param>
public sealed record AuditErrorReport(double TrueU, double TrueV, double DU, double DV, double Distance, double Sigma, bool Covered)
{
    internal static AuditErrorReport From(MatchedMark match) => new(
        match.Truth.U,
        match.Truth.V,
        match.Error.U,
        match.Error.V,
        match.Error.Magnitude,
        Math.Sqrt(match.Mark.Centre.Covariance.Uu + match.Mark.Centre.Covariance.Vv),
        match.Covered);
}
