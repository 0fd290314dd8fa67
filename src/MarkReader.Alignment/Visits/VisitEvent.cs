using MarkReader.Alignment.Survey;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Visits;

/// <summary>Something that was done or seen during a visit, in the order of time.</summary>
public abstract record VisitEvent
{
    private VisitEvent()
    {
    }

    /// <summary>A pulse was fired on a leg and its mark measured.</summary>
    /// <param name="Path">Path length of the station as stated, mm.</param>
    /// <param name="Gantry">For leg 2 where the gantry stood; null: where the leg is aligned.</param>
    public sealed record Mark(string Leg, double Path, MeasuredPoint At, Length? Gantry = null) : VisitEvent;

    /// <summary>A screw of a leg's source mirror was turned; positive clockwise, facing the knob.</summary>
    public sealed record Turn(string Leg, string Screw, double Turns) : VisitEvent;

    /// <summary>A pulse was fired with tape on the head's entry hole.</summary>
    public sealed record Survey(SurveyMark Seen) : VisitEvent;

    /// <summary>Shims were put under a corner of the gantry's frame.</summary>
    public sealed record Shim(BedCorner Corner, Length Height) : VisitEvent;

    /// <summary>The head's target was moved by this in its plane; marks move the other way.</summary>
    public sealed record MoveTarget(CardVector By) : VisitEvent;

    /// <summary>The tube was raised.</summary>
    public sealed record RaiseTube(Length Height) : VisitEvent;

    /// <summary>A leg is begun anew; leg 2 with the gantry at this end of its travel, where its marks are then fired.</summary>
    public sealed record Realign(string Leg, GantryEnd At) : VisitEvent;

    /// <summary>Something not listed here has moved a leg's beam or its target: where it runs is open again, what its screws do is not.</summary>
    public sealed record Disturbed(string Leg) : VisitEvent;

    /// <summary>A step is left as it is, for a reason; it counts as neither within nor outside until it is worked on again.</summary>
    public sealed record Skip(VisitStep Step, string Reason) : VisitEvent;

    /// <summary>A step is to be done once more, though nothing is known to have changed: its marks no longer count, nor do those of later steps.</summary>
    public sealed record Again(VisitStep Step) : VisitEvent;
}
