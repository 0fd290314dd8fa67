using MarkReader.Quantities;

namespace MarkReader.Alignment.Screws;

/// <summary>Something that happened on a leg, in the order of time.</summary>
public abstract record LegEvent
{
    private LegEvent()
    {
    }

    /// <summary>A pulse was fired and its mark measured.</summary>
    /// <param name="Path">Path length of the station as stated, mm.</param>
    /// <param name="At">The mark in the card frame on the tape, with its covariance.</param>
    public sealed record Mark(double Path, MeasuredPoint At) : LegEvent;

    /// <summary>A screw was turned.</summary>
    /// <param name="Screw">Its name.</param>
    /// <param name="Turns">Turns of the knob, positive clockwise as seen facing it.</param>
    public sealed record Turn(string Screw, double Turns) : LegEvent;

    /// <summary>
    /// Something else has moved the beam or the target (an earlier leg, a shim, the tape): where the beam runs is open again,
    /// what the screws do is not.
    /// </summary>
    public sealed record Disturbed : LegEvent;
}
