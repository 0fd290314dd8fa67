using MarkReader.Quantities;

namespace MarkReader.Alignment.Frames;

/// <summary>A fold mirror's frame: a plate on three contacts, of which two or three are screws.</summary>
/// <remarks>
/// The plane of incidence is level: it holds the frame's direction to the right. Which way a clockwise turn pushes the plate is
/// not part of the frame; it is learned.
/// </remarks>
public sealed record MirrorFrame
{
    internal MirrorFrame(IReadOnlyList<FrameContact> contacts, double pitch) => (Contacts, Pitch) = (contacts, pitch);

    /// <summary>The three contacts, in the order given.</summary>
    public IReadOnlyList<FrameContact> Contacts { get; }

    /// <summary>What a contact advances in one turn of its screw, mm.</summary>
    public double Pitch { get; }

    /// <summary>Angle between the beam and the mirror's normal. Default: 45°.</summary>
    public Angle Incidence { get; private init; } = Angle.FromDegrees(45);

    /// <summary>To which side the beam is turned.</summary>
    public FoldSide Fold { get; init; }

    /// <summary>How far the mirror's face lies in front of the plane of the contacts, mm. Default: zero.</summary>
    public double FaceDistance { get; init; }

    /// <summary>Names of the screws, in the order of the contacts.</summary>
    public IReadOnlyList<string> Screws => [.. Contacts.Where(c => c.Screw is not null).Select(c => c.Screw!)];

    /// <summary>The same frame with another angle of incidence; 0° to 75°.</summary>
    public Outcome<MirrorFrame> WithIncidence(Angle incidence) => FrameChecks.Incidence(incidence) is { } wrong
        ? wrong
        : this with { Incidence = incidence };

    /// <summary>A square frame with contacts at three of its corners, the beam in the middle.</summary>
    /// <param name="pivot">The corner of the pivot; null when all three contacts are screws.</param>
    /// <param name="screws">Two screws with a pivot, three without.</param>
    /// <param name="arm">Side of the square: the distance between neighbouring contacts, mm.</param>
    /// <param name="pitch">The thread's pitch, mm.</param>
    public static Outcome<MirrorFrame> AtCorners(FrameCorner? pivot, IReadOnlyList<ScrewCorner> screws, double arm, double pitch)
    {
        if ((FrameChecks.Arm(arm) ?? FrameChecks.Pitch(pitch)) is { } wrong)
            return wrong;
        IEnumerable<FrameContact> turned = screws.Select(s => Corner(s.Screw, s.At, arm));
        return Of([.. pivot is { } at ? turned.Prepend(Corner(null, at, arm)) : turned], pitch);
    }

    /// <summary>A frame with contacts at places of its own.</summary>
    public static Outcome<MirrorFrame> Of(IReadOnlyList<FrameContact> contacts, double pitch) =>
        (FrameChecks.Pitch(pitch) ?? FrameChecks.Contacts(contacts)) is { } wrong
            ? wrong
            : new MirrorFrame([.. contacts], pitch);

    private static FrameContact Corner(string? screw, FrameCorner at, double arm) => new(
        screw,
        at is FrameCorner.LowerRight or FrameCorner.UpperRight ? arm / 2 : -arm / 2,
        at is FrameCorner.UpperLeft or FrameCorner.UpperRight ? arm / 2 : -arm / 2);
}
