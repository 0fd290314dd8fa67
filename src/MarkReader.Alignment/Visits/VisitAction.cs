using MarkReader.Alignment.Survey;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Visits;

/// <summary>The next thing that a person does. Every kind but done and stop has an event of the same meaning.</summary>
public abstract record VisitAction
{
    private VisitAction()
    {
    }

    /// <summary>Fire one pulse on a leg.</summary>
    /// <param name="Path">At the station with this path length, mm.</param>
    /// <param name="Gantry">For leg 2 where the gantry stands, from its near end; null for other legs and when no bed is stated.</param>
    public sealed record Fire(string Leg, double Path, Length? Gantry) : VisitAction;

    /// <summary>Turn one screw; positive clockwise, facing the knob.</summary>
    public sealed record Turn(string Leg, string Screw, double Turns) : VisitAction
    {
        /// <summary>Whether it goes beyond the place wanted, so that the next one comes back from one side; false for a turn that was done.</summary>
        public bool GoesBeyond { get; init; }
    }

    /// <summary>Fire one pulse with tape on the head's entry hole and the head at this place.</summary>
    public sealed record Survey(Length X, Length Y) : VisitAction;

    /// <summary>Put shims under a corner of the gantry's frame.</summary>
    public sealed record Shim(BedCorner Corner, Length Height) : VisitAction;

    /// <summary>Move the head's target in its plane; upwards by shims under its mount.</summary>
    public sealed record MoveTarget(CardVector By) : VisitAction;

    /// <summary>Raise the tube at both ends.</summary>
    public sealed record RaiseTube(Length Height) : VisitAction;

    /// <summary>Align a leg again; leg 2 with the gantry at this end of its travel.</summary>
    public sealed record Realign(string Leg, GantryEnd At) : VisitAction;

    /// <summary>Everything that was asked for is within its tolerance.</summary>
    public sealed record Done : VisitAction;

    /// <summary>Something does not fit and has to be looked at first; the reason says what.</summary>
    public sealed record Stop : VisitAction;
}
