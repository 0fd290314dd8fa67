using MarkReader.Alignment.Legs;

namespace MarkReader.Alignment.Frames;

/// <summary>The beam that a frame's mirror sends down its leg, by the vector law of reflection r = k − 2(k·m)m.</summary>
/// <remarks>
/// Axes: right, up (facing the knobs) and n, from the knobs through the mirror's face; the plane of incidence holds right and n.
/// The incoming beam is fixed and meets the untilted face at its middle, from where the leg's z counts. u is to the right and v up
/// as one looks along the reflected beam at the tape.
/// </remarks>
internal static class FoldedBeam
{
    /// <param name="frame">The frame.</param>
    /// <param name="heights">How far each contact is pushed along n, mm.</param>
    /// <param name="fold">To which side the beam is turned; unknown counts as left.</param>
    public static BeamLine Of(MirrorFrame frame, IReadOnlyList<double> heights, FoldSide fold)
    {
        (double sin, double cos) = Math.SinCos(frame.Incidence.Radians);
        double side = fold == FoldSide.Right ? -1 : 1;
        PlatePlane plate = PlatePlane.Through(frame.Contacts, heights);
        Direction k = new(side * sin, 0, -cos), along = new(side * sin, 0, cos), u = new(cos, 0, -side * sin);
        Direction m = new Direction(-plate.GX, -plate.GY, 1).Unit();
        // The face is the plate moved along its own normal by the face distance; the beam comes through (0, 0, FaceDistance).
        double gap = (m.N * plate.H0) + frame.FaceDistance - (m.N * frame.FaceDistance);
        double s = gap / k.Dot(m);
        Direction hit = s * k, reflected = k - (2 * k.Dot(m) * m);
        double su = reflected.Dot(u) / reflected.Dot(along), sv = reflected.Up / reflected.Dot(along), z = hit.Dot(along);
        return new(hit.Dot(u) - (su * z), su, hit.Up - (sv * z), sv);
    }

    private readonly record struct Direction(double Right, double Up, double N)
    {
        public static Direction operator *(double f, Direction a) => new(f * a.Right, f * a.Up, f * a.N);

        public static Direction operator -(Direction a, Direction b) => new(a.Right - b.Right, a.Up - b.Up, a.N - b.N);

        public double Dot(Direction b) => (Right * b.Right) + (Up * b.Up) + (N * b.N);

        public Direction Unit() => (1 / Math.Sqrt(Dot(this))) * this;
    }
}
