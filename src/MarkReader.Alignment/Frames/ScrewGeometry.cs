using MarkReader.Alignment.Legs;

namespace MarkReader.Alignment.Frames;

/// <summary>What one turn of a screw does to the beam of the leg when it pushes its contact towards the mirror's face.</summary>
/// <param name="Screw">The screw.</param>
/// <param name="SlopeU">Change of the slope in the plane of u, mrad per turn.</param>
/// <param name="SlopeV">Change of the slope along v, mrad per turn.</param>
/// <param name="WalkU">Sideways shift of the beam at the reflecting point, mm per turn along u; its sign is that of a fold to the left.</param>
/// <param name="WalkV">The same along v.</param>
public sealed record ScrewGeometry(string Screw, double SlopeU, double SlopeV, double WalkU, double WalkV)
{
    // Small enough for the derivative (the next term is its square), large enough for rounding.
    private const double Step = 1e-3;

    /// <summary>Size of the change of slope, mrad per turn.</summary>
    public double Slope => Math.Sqrt((SlopeU * SlopeU) + (SlopeV * SlopeV));

    /// <summary>The pivot offset k of this screw, mm: the beam swings about the place z = −k of its leg.</summary>
    public double PivotOffset => ((WalkU * SlopeU) + (WalkV * SlopeV)) / (Slope * Slope) * 1000;

    /// <summary>The screws of a frame, in the order of its contacts.</summary>
    public static IReadOnlyList<ScrewGeometry> Of(MirrorFrame frame) =>
        [.. Enumerable.Range(0, 3).Where(i => frame.Contacts[i].Screw is not null).Select(i => Of(frame, i))];

    private static ScrewGeometry Of(MirrorFrame frame, int contact)
    {
        BeamLine Turned(double turns)
        {
            double[] heights = new double[3];
            heights[contact] = turns * frame.Pitch;
            return FoldedBeam.Of(frame, heights, frame.Fold);
        }

        BeamLine plus = Turned(Step), minus = Turned(-Step);
        double per = 1 / (2 * Step);
        return new(
            frame.Contacts[contact].Screw!,
            1000 * per * (plus.Sx - minus.Sx),
            1000 * per * (plus.Sy - minus.Sy),
            per * (plus.X0 - minus.X0),
            per * (plus.Y0 - minus.Y0));
    }
}
