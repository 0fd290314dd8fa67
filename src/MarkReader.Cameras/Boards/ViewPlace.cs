using MarkReader.Quantities;

namespace MarkReader.Cameras.Boards;

/// <summary>From where a photo of the board was taken, roughly.</summary>
/// <param name="Tilt">Angle between the board's normal and the line of sight to its middle.</param>
/// <param name="TowardsU">Share of the tilt that goes to the camera's standing on the board's right, −1 to 1.</param>
/// <param name="TowardsV">The same for above.</param>
/// <param name="Turn">Turn of the board in the sensor's picture, −180° to 180°.</param>
/// <param name="Distance">From the camera to the board's middle.</param>
/// <param name="Corners">Which of the picture's corners the board reaches: upper left, upper right, lower left, lower right of the sensor's picture.</param>
public sealed record ViewPlace(Angle Tilt, double TowardsU, double TowardsV, Angle Turn, Length Distance, IReadOnlyList<bool> Corners);
