using MarkReader.Alignment.Frames;
using MarkReader.Alignment.Legs;

namespace MarkReader.Alignment.Screws;

/// <summary>What is known of a leg before its events: geometry, frame, earlier responses, habits.</summary>
/// <param name="Leg">Incidence of the target and pivot offset.</param>
/// <param name="PathUncertainty">Standard uncertainty of each station's path length, mm.</param>
/// <param name="Frame">The source mirror's frame.</param>
/// <param name="Known">Responses from an earlier visit; may be empty.</param>
/// <param name="Habits">Assumptions on frames and hands.</param>
internal sealed record LegModel(Leg Leg, double PathUncertainty, MirrorFrame Frame, IReadOnlyList<KnownResponse> Known, ScrewHabits Habits)
{
    public BeamFrame Tape { get; } = new(Leg.Incidence);

    public IReadOnlyList<ScrewGeometry> Screws { get; } = ScrewGeometry.Of(Frame);

    public int IndexOf(string screw)
    {
        for (int i = 0; i < Screws.Count; i++)
        {
            if (Screws[i].Screw == screw)
                return i;
        }

        return -1;
    }
}
