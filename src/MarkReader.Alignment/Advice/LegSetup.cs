using MarkReader.Alignment.Frames;
using MarkReader.Alignment.Legs;
using MarkReader.Alignment.Screws;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Advice;

/// <summary>A leg to be aligned.</summary>
/// <param name="Leg">Incidence of the target, pivot offset.</param>
/// <param name="Near">The station with the short path. Its path uncertainty holds for every station of the leg.</param>
/// <param name="Far">The station with the long path.</param>
/// <param name="Tolerance">On the spread of the marks over the travel: slope times the difference of the path lengths, across the beam.</param>
/// <param name="Frame">The frame of the source mirror.</param>
public sealed record LegSetup(Leg Leg, Station Near, Station Far, Length Tolerance, MirrorFrame Frame)
{
    /// <summary>Responses from an earlier visit. Default: none.</summary>
    public IReadOnlyList<KnownResponse> Known { get; init; } = [];

    /// <summary>What is assumed of the screws and the hand.</summary>
    public ScrewHabits Habits { get; init; } = ScrewHabits.Usual;

    /// <summary>A mark this far from the card's origin is still on the target; no turn of open sense may put it farther out. Default: 8 mm.</summary>
    public Length TargetRadius { get; init; } = Length.FromMillimetres(8);

    /// <summary>Difference of the path lengths, m: one mrad of slope spreads the marks by so many mm.</summary>
    internal double Travel => (Far.Path - Near.Path).Millimetres / 1000;

    /// <summary>The largest slope within the tolerance, mrad.</summary>
    internal double SlopeLimit => Tolerance.Millimetres / Travel;

    internal LegModel Model => new(Leg, Near.PathUncertainty.Millimetres, Frame, Known, Habits);
}
