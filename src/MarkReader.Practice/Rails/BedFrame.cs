using MarkReader.Quantities;

namespace MarkReader.Practice.Rails;

/// <summary>A corner of the bed: left is the gantry's end with mirror two, near is the end of its travel next to mirror one.</summary>
public enum BedCorner
{
    NearLeft,
    NearRight,
    FarLeft,
    FarRight,
}

/// <summary>Height of one corner of the frame that carries the gantry's two rails.</summary>
/// <param name="Built">Height as the frame stands without shims, against a flat frame.</param>
/// <param name="Shims">Thickness of the shims under it, zero or more.</param>
public sealed record CornerHeight(Length Built, Length Shims)
{
    public static CornerHeight Flat { get; } = new(Length.Zero, Length.Zero);

    internal double Millimetres => (Built + Shims).Millimetres;
}

/// <summary>The frame that carries the gantry's rails; twisted when its corners do not lie in one plane.</summary>
/// <remarks>The left rail stands under mirror two, the right one at the full travel of the head. Heights run linearly along each rail.</remarks>
public sealed record BedFrame(CornerHeight NearLeft, CornerHeight NearRight, CornerHeight FarLeft, CornerHeight FarRight)
{
    /// <summary>Most that can be put under a corner, or under the tube.</summary>
    public const double MostMillimetres = 20;

    public static BedFrame Flat { get; } = new(CornerHeight.Flat, CornerHeight.Flat, CornerHeight.Flat, CornerHeight.Flat);

    public CornerHeight this[BedCorner corner] => corner switch
    {
        BedCorner.NearLeft => NearLeft,
        BedCorner.NearRight => NearRight,
        BedCorner.FarLeft => FarLeft,
        BedCorner.FarRight => FarRight,
        _ => throw new ArgumentOutOfRangeException(nameof(corner), corner, "A bed has four corners."),
    };

    /// <summary>The frame with one corner changed.</summary>
    public BedFrame With(BedCorner corner, CornerHeight height) => corner switch
    {
        BedCorner.NearLeft => this with { NearLeft = height },
        BedCorner.NearRight => this with { NearRight = height },
        BedCorner.FarLeft => this with { FarLeft = height },
        BedCorner.FarRight => this with { FarRight = height },
        _ => throw new ArgumentOutOfRangeException(nameof(corner), corner, "A bed has four corners."),
    };

    /// <summary>Shims put under a corner; a negative height takes shims away that are there.</summary>
    public Outcome<BedFrame> Shim(BedCorner corner, Length height)
    {
        CornerHeight old = this[corner];
        Length shims = old.Shims + height;
        if (shims.Millimetres < -1e-9)
            return PracticeFailures.NoShimsToTakeAway(corner, old.Shims);
        return shims.Millimetres > MostMillimetres
            ? PracticeFailures.TooManyShims(corner)
            : With(corner, old with { Shims = shims < Length.Zero ? Length.Zero : shims });
    }

    /// <summary>Height of the left rail, mm, at part <paramref name="t"/> of the gantry's travel.</summary>
    internal double Left(double t) => ((1 - t) * NearLeft.Millimetres) + (t * FarLeft.Millimetres);

    /// <summary>Height of the right rail, mm.</summary>
    internal double Right(double t) => ((1 - t) * NearRight.Millimetres) + (t * FarRight.Millimetres);
}
