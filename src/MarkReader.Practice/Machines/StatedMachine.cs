using MarkReader.Practice.Frames;
using MarkReader.Quantities;

namespace MarkReader.Practice.Machines;

/// <summary>A screw as its owner describes it.</summary>
public sealed record StatedScrew(string Name, FrameCorner At);

/// <summary>A frame as its owner describes it; which way its screws push is not known.</summary>
/// <param name="Pivot">The corner with the fixed pivot; null for a frame with three screws.</param>
/// <param name="Screws">Two or three screws, each at its own corner.</param>
/// <param name="Arm">Side of the square on whose corners the contacts stand; with the screws next to the pivot, the arm of each.</param>
/// <param name="Pitch">Pitch of the threads.</param>
public sealed record StatedFrame(FrameCorner? Pivot, IReadOnlyList<StatedScrew> Screws, Length Arm, Length Pitch);

/// <summary>A leg as its owner describes it.</summary>
/// <param name="NearPath">Path length at the near end of the travel.</param>
/// <param name="FarPath">Path length at the far end.</param>
/// <param name="Incidence">Angle between the beam and the tape's normal, in the plane of u, positive when the +u side lies farther along the beam.</param>
/// <param name="Frame">The frame of the source mirror.</param>
public sealed record StatedLeg(Length NearPath, Length FarPath, Angle Incidence, StatedFrame Frame)
{
    /// <summary>Travel of the carriage.</summary>
    public Length Travel => FarPath - NearPath;

    /// <summary>The place of the carriage for a stated path length, from its near end.</summary>
    public Length TravelAt(Length path) => path - NearPath;
}

/// <summary>A machine as its owner describes it.</summary>
public sealed record StatedMachine(StatedLeg LegOne, StatedLeg LegTwo, StatedFrame MirrorThree)
{
    /// <summary>A frame 30 mm square with a pivot, two screws and M4 threads.</summary>
    public static StatedFrame TwoScrewFrame { get; } = new(
        FrameCorner.LowerLeft, [new("A", FrameCorner.LowerRight), new("B", FrameCorner.UpperLeft)], Length.FromMillimetres(30), Length.FromMillimetres(0.7));

    /// <summary>The same with a third screw in the pivot's place.</summary>
    public static StatedFrame ThreeScrewFrame { get; } = TwoScrewFrame with
    {
        Pivot = null,
        Screws = [new("A", FrameCorner.LowerRight), new("B", FrameCorner.UpperLeft), new("C", FrameCorner.LowerLeft)],
    };

    /// <summary>A desktop machine with a bed of 500 by 400 mm: paths 80 to 480 mm with tape on mirror two's face, and 60 to 560 mm with tape on the entry hole.</summary>
    public static StatedMachine Desktop { get; } = new(
        new(Length.FromMillimetres(80), Length.FromMillimetres(480), Angle.FromDegrees(45), TwoScrewFrame),
        new(Length.FromMillimetres(60), Length.FromMillimetres(560), Angle.Zero, TwoScrewFrame),
        TwoScrewFrame);
}
