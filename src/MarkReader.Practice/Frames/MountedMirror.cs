using MarkReader.Practice.Geometry;
using MarkReader.Quantities;

namespace MarkReader.Practice.Frames;

/// <summary>A mirror in its frame on its seat.</summary>
/// <param name="Frame">The three contacts and the face.</param>
/// <param name="Seat">How the frame is bolted on.</param>
/// <param name="Radius">Radius of the round mirror; a beam whose middle falls outside is lost.</param>
public sealed record MountedMirror(ThreeContactFrame Frame, FrameSeat Seat, Length Radius)
{
    /// <summary>The mirror's face when its middle rests at <paramref name="middle"/> and a straight seat has the axes <paramref name="fold"/>.</summary>
    internal Plane Face(Vector3 middle, Axes fold) => Frame.Face(new(middle, Seat.Turn(fold)));
}
