using MarkReader.Cameras.Boards;
using MarkReader.Cameras.Calibration;
using MarkReader.Cameras.Profiles;

namespace MarkReader.Application.Cameras;

/// <summary>A calibrated camera with what its user should know.</summary>
/// <param name="Coverage">Of the photos that were used.</param>
/// <param name="Refused">Photos that showed no usable board.</param>
public sealed record CameraFinding(CameraProfile Profile, CalibratedCamera Calibration, BoardCoverage Coverage, IReadOnlyList<RefusedPhoto> Refused);
