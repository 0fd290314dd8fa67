using MarkReader.Quantities;

namespace MarkReader.Alignment.Survey;

/// <summary>The travels of the machine.</summary>
/// <param name="X">The head's travel, from its near end, which is nearest to mirror two.</param>
/// <param name="Y">The gantry's travel, from its near end, which is nearest to mirror one.</param>
public sealed record Bed(Length X, Length Y);

/// <summary>A corner of the bed: left is the head's near end (x = 0), near is the gantry's (y = 0).</summary>
public enum BedCorner
{
    NearLeft,
    NearRight,
    FarLeft,
    FarRight,
}

/// <summary>An end of the gantry's travel.</summary>
public enum GantryEnd
{
    Near,
    Far,
}

public static class BedCorners
{
    public static IReadOnlyList<BedCorner> All { get; } = [BedCorner.NearLeft, BedCorner.NearRight, BedCorner.FarLeft, BedCorner.FarRight];

    public static bool IsRight(this BedCorner corner) => corner is BedCorner.NearRight or BedCorner.FarRight;

    /// <summary>The end of the gantry's travel at which the corner lies.</summary>
    public static GantryEnd End(this BedCorner corner) => corner is BedCorner.FarLeft or BedCorner.FarRight ? GantryEnd.Far : GantryEnd.Near;

    /// <summary>The corner on the same side at the other end of the gantry's travel.</summary>
    public static BedCorner AtOtherEnd(this BedCorner corner) => corner switch
    {
        BedCorner.NearLeft => BedCorner.FarLeft,
        BedCorner.NearRight => BedCorner.FarRight,
        BedCorner.FarLeft => BedCorner.NearLeft,
        _ => BedCorner.NearRight,
    };

    /// <summary>Where the head stands for this corner.</summary>
    public static (Length X, Length Y) Place(this Bed bed, BedCorner corner) =>
        (corner.IsRight() ? bed.X : Length.Zero, bed.At(corner.End()));

    /// <summary>Where the gantry stands at an end of its travel, from its near end.</summary>
    public static Length At(this Bed bed, GantryEnd end) => end == GantryEnd.Far ? bed.Y : Length.Zero;
}
