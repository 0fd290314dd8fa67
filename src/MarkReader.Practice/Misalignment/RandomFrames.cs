using MarkReader.Practice.Frames;
using MarkReader.Practice.Machines;
using MarkReader.Quantities;

namespace MarkReader.Practice.Misalignment;

/// <summary>Draws frames of a stated kind: senses left to chance, arms longer or shorter.</summary>
internal static class RandomFrames
{
    /// <exception cref="ArgumentException">The stated frame is not one with three contacts at different corners.</exception>
    public static ThreeContactFrame Draw(StatedFrame stated, MisalignmentRanges ranges, Chance chance)
    {
        FrameCorner[] corners = stated.Pivot is { } pivot ? [pivot, .. stated.Screws.Select(s => s.At)] : [.. stated.Screws.Select(s => s.At)];
        if (corners.Length != 3 || corners.Distinct().Count() != 3)
            throw new ArgumentException("A frame has three contacts at different corners.", nameof(stated));

        // Arms are stretched away from the pivot, or from the mirror's middle where there is none.
        double half = stated.Arm.Millimetres / 2;
        (double Right, double Up) from = stated.Pivot is { } fixedCorner ? Place(fixedCorner, half) : (0, 0);
        List<FrameContact> contacts = stated.Pivot is null ? [] : [new(Length.FromMillimetres(from.Right), Length.FromMillimetres(from.Up))];
        foreach (StatedScrew screw in stated.Screws)
        {
            double stretch = 1 + chance.Within(ranges.Arm);
            ScrewSense sense = chance.Heads() ? ScrewSense.ClockwisePushes : ScrewSense.ClockwisePulls;
            (double right, double up) = Place(screw.At, half);
            contacts.Add(new(
                Length.FromMillimetres(from.Right + (stretch * (right - from.Right))),
                Length.FromMillimetres(from.Up + (stretch * (up - from.Up))),
                new Screw(screw.Name, stated.Pitch, sense, ranges.Backlash).WithKnobInGap(chance.Within(1))));
        }

        return new(contacts[0], contacts[1], contacts[2], Length.FromMillimetres(chance.Between(0, ranges.FaceDistance.Millimetres)));
    }

    private static (double Right, double Up) Place(FrameCorner corner, double half)
    {
        (int right, int up) = corner.Signs();
        return (right * half, up * half);
    }
}
