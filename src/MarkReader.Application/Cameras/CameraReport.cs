using System.Text.Json;
using MarkReader.Cameras.Calibration;

namespace MarkReader.Application.Cameras;

/// <summary>The JSON of a calibration, beside the profile itself.</summary>
public sealed record CameraReport(
    string Name,
    IReadOnlyList<CameraParameterReport> Parameters,
    double LensDoubtPx,
    double ResidualPx,
    IReadOnlyList<CameraTermReport> Terms,
    IReadOnlyList<CameraViewReport> Views,
    IReadOnlyList<DroppedView> Dropped,
    IReadOnlyList<RefusedPhotoReport> Refused,
    IReadOnlyList<string> Missing)
{
    public static CameraReport Of(CameraFinding f) => new(
        f.Profile.Name,
        [.. f.Calibration.Values.Select((v, i) => new CameraParameterReport(CalibratedCamera.Names[i], v, f.Calibration.StandardUncertainties[i]))],
        f.Profile.LensDoubtPx,
        f.Profile.ResidualPx,
        [.. f.Calibration.Evidence.Select(e => new CameraTermReport(Camel(e.Term), e.Ratio, e.Kept))],
        [.. f.Calibration.Views.Select((v, i) => new CameraViewReport(v.Name, f.Coverage.Places[i].Tilt.Degrees, v.Sightings, v.Used, v.ResidualPx))],
        f.Calibration.Dropped,
        [.. f.Refused.Select(r => new RefusedPhotoReport(r.Name, r.Failure.Code.Name, r.Failure.Message, r.Failure.Hint))],
        [.. f.Coverage.Missing.Select(Camel)]);

    private static string Camel<T>(T value)
        where T : struct, Enum => JsonNamingPolicy.CamelCase.ConvertName(value.ToString());
}

/// <summary>One parameter: focal lengths and principal point in px, bend and spread in mm, the rest without unit.</summary>
public sealed record CameraParameterReport(string Name, double Value, double StandardUncertainty);

/// <summary>One group of terms, its F ratio and whether it is in the model.</summary>
public sealed record CameraTermReport(string Term, double Ratio, bool Kept);

/// <summary>One photo that was used.</summary>
public sealed record CameraViewReport(string Name, double TiltDegrees, int Sections, int Used, double ResidualPx);

/// <summary>One photo that was not.</summary>
public sealed record RefusedPhotoReport(string Name, string Code, string Message, string Hint);
