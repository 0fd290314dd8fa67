using MarkReader.Cameras.Boards;
using MarkReader.Cameras.Profiles;

namespace MarkReader.Imaging.Boards;

/// <summary>A photo of the calibration board, measured; everything in the sensor's frame, whichever way the phone was held.</summary>
/// <param name="View">Where the board's printed edges were seen.</param>
/// <param name="Traits">What the file says of camera and lens.</param>
/// <param name="MarkersSeen">Markers recognised.</param>
/// <param name="ResidualPx">Root mean square distance of the edges from this one view's own fit.</param>
public sealed record BoardPhoto(BoardView View, CameraTraits Traits, int MarkersSeen, double ResidualPx);
