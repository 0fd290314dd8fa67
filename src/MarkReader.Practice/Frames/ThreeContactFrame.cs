using MarkReader.Practice.Geometry;
using MarkReader.Quantities;

namespace MarkReader.Practice.Frames;

/// <summary>One of the three contacts between the fixed plate and the plate that carries the mirror.</summary>
/// <param name="Right">Place from the mirror's middle, to the right as seen facing the knobs.</param>
/// <param name="Up">Place from the mirror's middle, upwards.</param>
/// <param name="Screw">The screw that moves it; null for a fixed pivot.</param>
public sealed record FrameContact(Length Right, Length Up, Screw? Screw = null)
{
    internal Vector3 Tip => new(Right.Millimetres, Up.Millimetres, Screw?.Advance.Millimetres ?? 0);
}

/// <summary>A mirror's frame: a plate on three contacts, two or three of them screws, and the mirror's face in front of it.</summary>
/// <remarks>
/// The mirror's plane is that through the three contact points, moved along its normal by <see cref="FaceDistance"/>. So a turn of one
/// screw tilts the mirror about the line through the other two contacts, and the pivot offset and the sideways walk come by themselves.
/// </remarks>
public sealed record ThreeContactFrame
{
    /// <exception cref="ArgumentException">The contacts stand on one line, no two of them are screws, or two screws share a name.</exception>
    public ThreeContactFrame(FrameContact first, FrameContact second, FrameContact third, Length faceDistance)
    {
        (First, Second, Third, FaceDistance) = (first, second, third, faceDistance);
        Vector3 a = first.Tip, b = second.Tip, c = third.Tip;
        if (Math.Abs(((b.X - a.X) * (c.Y - a.Y)) - ((c.X - a.X) * (b.Y - a.Y))) < 1)
            throw new ArgumentException("The three contacts must not stand on one line.", nameof(third));
        string[] names = [.. Screws.Select(s => s.Name)];
        if (names.Length < 2 || names.Distinct(StringComparer.Ordinal).Count() < names.Length)
            throw new ArgumentException("A frame has two or three screws with different names.", nameof(third));
    }

    public FrameContact First { get; private init; }

    public FrameContact Second { get; private init; }

    public FrameContact Third { get; private init; }

    /// <summary>Distance of the mirror's face in front of the plane of the contacts; negative when it lies behind.</summary>
    public Length FaceDistance { get; }

    public IEnumerable<Screw> Screws => Contacts.Select(c => c.Screw).OfType<Screw>();

    private FrameContact[] Contacts => [First, Second, Third];

    public Screw? Find(string name) => Screws.FirstOrDefault(s => s.Name == name);

    /// <summary>The frame after a turn of one knob, clockwise positive.</summary>
    public Outcome<ThreeContactFrame> Turn(string name, double turns)
    {
        if (Find(name) is not { } screw)
            return PracticeFailures.NoSuchScrew(name, [.. Screws.Select(s => s.Name)]);
        if (!double.IsFinite(turns) || Math.Abs(screw.KnobTurns + turns) > Screw.TurnsToTheEnd)
            return PracticeFailures.AtItsEnd(name);
        FrameContact Moved(FrameContact contact) => contact.Screw == screw ? contact with { Screw = screw.Turned(turns) } : contact;
        return this with { First = Moved(First), Second = Moved(Second), Third = Moved(Third) };
    }

    /// <summary>The mirror's face: its middle and its plane, for a seat whose x is right, y up (facing the knobs) and z forwards.</summary>
    /// <remarks>The seat's origin is where the face's middle stands with all screws in their middle places.</remarks>
    internal Plane Face(Pose seat)
    {
        Vector3 back = new(0, 0, -FaceDistance.Millimetres);
        Plane face = Plane.Through(First.Tip + back, Second.Tip + back, Third.Tip + back, Vector3.AlongZ).Moved(FaceDistance.Millimetres);
        // The middle of the face lies on the seat's z axis.
        Vector3 middle = new(0, 0, face.Point.Dot(face.Normal) / face.Normal.Z);
        return new(seat.Point(middle), seat.Direction(face.Normal));
    }
}
