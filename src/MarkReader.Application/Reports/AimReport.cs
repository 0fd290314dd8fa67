using MarkReader.Alignment.Aiming;
using MarkReader.Application.Aiming;
using MarkReader.Quantities;

namespace MarkReader.Application.Reports;

/// <summary>The JSON of an aim point.</summary>
/// <param name="Near">The near mark; x and y in its own photo.</param>
/// <param name="Far">The far mark; x and y in the far photo.</param>
/// <param name="Aim">The aim point; x and y in the far photo, also when it lies outside the picture.</param>
/// <param name="Ratio">|aim − near| / |far − near|.</param>
/// <param name="Leg">The inputs that were used.</param>
/// <param name="Fit">The test of the fit.</param>
/// <param name="Quality">How good the photos are; null in results of earlier versions.</param>
/// <param name="Cameras">The camera profiles that were used; null for none.</param>
public sealed record AimReport(
    MarkReport Near,
    MarkReport Far,
    AimPointReport Aim,
    SlopeReport Slope,
    double Ratio,
    LegReport Leg,
    FitReport Fit,
    IReadOnlyList<WarningReport> Warnings,
    AimQualityReport? Quality,
    AimCamerasReport? Cameras = null)
{
    public static AimReport From(AimFinding finding)
    {
        (AimSolution solution, PixelPoint photo) = (finding.Solution, finding.AimInPhoto);
        return new(
            MarkReport.From(finding.Near),
            MarkReport.From(finding.Far),
            new(solution.Aim.Point.U, solution.Aim.Point.V, MarkReport.Matrix(solution.Aim.Covariance), photo.X, photo.Y, ComponentReport.From(solution.Budget)),
            new(solution.Slope.U, solution.Slope.V, MarkReport.Matrix(solution.Slope.Covariance)),
            solution.Ratio,
            LegReport.From(finding.Leg),
            new(solution.Fit.ChiSquare, solution.Fit.DegreesOfFreedom, [.. solution.Residuals.Select(r => new ResidualReport(r.Residual.U, r.Residual.V))]),
            WarningReport.From(finding.Warnings),
            new(finding.NearView is { } near ? QualityReport.From(near.Quality) : null, QualityReport.From(finding.FarView.Quality)),
            AimCamerasReport.From(finding));
    }
}

/// <summary>A point of the card frame (mm, mm²), its place in the photo (px), and its covariance by source (null in results of earlier versions).</summary>
public sealed record AimPointReport(double U, double V, double[][] Covariance, double X, double Y, IReadOnlyList<ComponentReport>? Budget);

/// <summary>The angle between the beam and the rail in beam coordinates, mrad and mrad².</summary>
public sealed record SlopeReport(double U, double V, double[][] Covariance);

/// <summary>The leg's inputs, mm and degrees; uncertainties are standard uncertainties.</summary>
public sealed record LegReport(
    double NearPath, double FarPath, double PathUncertainty, double IncidenceDegrees, double PivotOffset, double PivotUncertainty)
{
    internal static LegReport From(CheckedLeg leg) => new(
        leg.Near.Path.Millimetres,
        leg.Far.Path.Millimetres,
        leg.Near.PathUncertainty.Millimetres,
        leg.Leg.Incidence.Degrees,
        leg.Leg.PivotOffset.Millimetres,
        leg.Leg.PivotUncertainty.Millimetres);
}

/// <summary>χ², its degrees of freedom (none for two marks), and each mark's distance from the line, mm.</summary>
public sealed record FitReport(double ChiSquare, int DegreesOfFreedom, IReadOnlyList<ResidualReport> Residuals);

public sealed record ResidualReport(double U, double V);

/// <summary>The quality of the near photo (null when one photo shows both marks) and of the far photo.</summary>
public sealed record AimQualityReport(QualityReport? Near, QualityReport Far);

/// <summary>Names of the camera profiles of the near photo (null when one photo shows both, or for none) and of the far photo (null for none).</summary>
public sealed record AimCamerasReport(string? Near, string? Far)
{
    internal static AimCamerasReport? From(AimFinding finding) => (finding.NearView?.CameraProfile, finding.FarView.CameraProfile) switch
    {
        (null, null) => null,
        var (near, far) => new(near, far),
    };
}
