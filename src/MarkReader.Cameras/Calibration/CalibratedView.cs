using MarkReader.Cameras.Boards;

namespace MarkReader.Cameras.Calibration;

/// <summary>How one photo took part in a calibration.</summary>
/// <param name="Sightings">Edge sections or corner coordinates it gave.</param>
/// <param name="Used">Those that were not left out as outliers.</param>
/// <param name="ResidualPx">Root mean square of the used ones' residuals.</param>
public sealed record CalibratedView(string Name, BoardPose Pose, int Sightings, int Used, double ResidualPx);
