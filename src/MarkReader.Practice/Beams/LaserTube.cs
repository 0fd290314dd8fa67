using MarkReader.Practice.Geometry;
using MarkReader.Quantities;

namespace MarkReader.Practice.Beams;

/// <summary>An end of the tube: the front one is where the beam leaves.</summary>
public enum TubeEnd
{
    Front,
    Rear,
}

/// <summary>One support of the tube.</summary>
/// <param name="Distance">From mirror one's middle, along the tube.</param>
/// <param name="Right">Place of the tube's axis to the right of mirror one's middle, as one looks along the beam.</param>
/// <param name="Up">Place of the axis above it.</param>
public sealed record TubeSupport(Length Distance, Length Right, Length Up);

/// <summary>The tube, which lies on two supports and fires along the line through their middles towards mirror one (along −x).</summary>
public sealed record LaserTube
{
    /// <exception cref="ArgumentOutOfRangeException">The supports do not stand one behind the other, at least 50 mm apart.</exception>
    public LaserTube(TubeSupport front, TubeSupport rear)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(front.Distance.Millimetres, nameof(front));
        ArgumentOutOfRangeException.ThrowIfLessThan(rear.Distance.Millimetres, front.Distance.Millimetres + 50, nameof(rear));
        (Front, Rear) = (front, rear);
    }

    public TubeSupport Front { get; private init; }

    public TubeSupport Rear { get; private init; }

    /// <summary>The tube after one end has been raised by <paramref name="height"/>; it swings about the other support.</summary>
    public Outcome<LaserTube> Raise(TubeEnd end, Length height)
    {
        TubeSupport old = end == TubeEnd.Front ? Front : Rear;
        TubeSupport raised = old with { Up = old.Up + height };
        if (Math.Abs(raised.Up.Millimetres) > Rails.BedFrame.MostMillimetres)
            return PracticeFailures.TubeTooFar(end);
        return end == TubeEnd.Front ? this with { Front = raised } : this with { Rear = raised };
    }

    /// <summary>The beam, starting at the front support.</summary>
    internal Ray Beam(Vector3 mirrorOne)
    {
        Vector3 front = Place(Front, mirrorOne);
        return new(front, (front - Place(Rear, mirrorOne)).Normalised());
    }

    // Looking along −x with z up, the right hand is at +y.
    private static Vector3 Place(TubeSupport support, Vector3 mirrorOne) =>
        mirrorOne + new Vector3(support.Distance.Millimetres, support.Right.Millimetres, support.Up.Millimetres);
}
