using MarkReader.Practice.Geometry;
using MarkReader.Quantities;

namespace MarkReader.Practice.Frames;

/// <summary>How a frame is bolted to its carrier: small turns away from the place in which the mirror folds the beam by 90°.</summary>
/// <param name="TiltRight">Turn of the mirror's normal to the right, as seen facing the knobs.</param>
/// <param name="TiltUp">Turn of the normal upwards.</param>
/// <param name="Roll">Turn of the whole frame in its own plane, clockwise as seen facing the knobs.</param>
public sealed record FrameSeat(Angle TiltRight, Angle TiltUp, Angle Roll)
{
    public static FrameSeat Straight { get; } = new(Angle.Zero, Angle.Zero, Angle.Zero);

    /// <summary>The seat from which a mirror with its screws in the middle reflects <paramref name="incoming"/> exactly into <paramref name="outgoing"/>.</summary>
    internal static FrameSeat Reflecting(Vector3 incoming, Vector3 outgoing, Axes fold, Angle roll)
    {
        Vector3 normal = (outgoing - incoming).Normalised();
        double forward = normal.Dot(fold.Z);
        return new(
            Angle.FromRadians(Math.Atan(normal.Dot(fold.X) / forward)), Angle.FromRadians(Math.Atan(normal.Dot(fold.Y) / forward)), roll);
    }

    /// <summary>The frame's axes: x to the right and y up facing the knobs, z forwards. Left-handed, because facing the knobs one looks along z.</summary>
    internal Axes Turn(Axes fold)
    {
        Vector3 forward = (fold.Z + (Math.Tan(TiltRight.Radians) * fold.X) + (Math.Tan(TiltUp.Radians) * fold.Y)).Normalised();
        Vector3 up = (fold.Y - (fold.Y.Dot(forward) * forward)).Normalised();
        Vector3 right = forward.Cross(up);
        return new(right.Turned(forward, Roll.Radians), up.Turned(forward, Roll.Radians), forward);
    }
}
