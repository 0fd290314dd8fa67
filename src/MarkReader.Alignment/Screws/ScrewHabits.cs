using MarkReader.Quantities;

namespace MarkReader.Alignment.Screws;

/// <summary>What is assumed of frames and hands before anything is learned of them.</summary>
/// <remarks>All are standard uncertainties unless named otherwise.</remarks>
public sealed record ScrewHabits
{
    /// <summary>Relative, of a screw's lever arm and with it of its response. Range: 0.01 to 1. Default: 0.2.</summary>
    public double Arm { get; init; } = 0.2;

    /// <summary>Of the direction of the axis about which a screw tilts the plate; twice that without a pivot. Range: 0.1° to 45°. Default: 6°.</summary>
    public Angle Axis { get; init; } = Angle.FromDegrees(6);

    /// <summary>Of a turn set by hand, in turns. Range: 0.0005 to 0.1. Default: 0.01 (3.6°).</summary>
    public double HandSetting { get; init; } = 0.01;

    /// <summary>Expected lost motion when a screw's direction is reversed. Range: 0° to 90°. Default: 5°.</summary>
    public Angle Backlash { get; init; } = Angle.FromDegrees(5);

    /// <summary>Of the lost motion. Range: 0.1° to 90°. Default: 4°.</summary>
    public Angle BacklashUncertainty { get; init; } = Angle.FromDegrees(4);

    /// <summary>The usual frame, hand and screw.</summary>
    public static ScrewHabits Usual { get; } = new();
}
