namespace MarkReader.Cameras.Calibration;

/// <summary>A photo that was left out of a calibration.</summary>
/// <param name="Name">The photo's name.</param>
/// <param name="ResidualPx">Root mean square distance of its edges or corners from where the other photos put them, px.</param>
/// <param name="OthersPx">The median of the same over all photos.</param>
public sealed record DroppedView(string Name, double ResidualPx, double OthersPx);
