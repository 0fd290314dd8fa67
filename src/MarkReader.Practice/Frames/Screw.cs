using MarkReader.Quantities;

namespace MarkReader.Practice.Frames;

/// <summary>What a clockwise turn, facing the knob, does to the plate that carries the mirror.</summary>
public enum ScrewSense
{
    /// <summary>The contact moves forwards, to the reflecting side.</summary>
    ClockwisePushes,

    /// <summary>The contact moves backwards, towards the knob.</summary>
    ClockwisePulls,
}

/// <summary>A screw of a mirror's frame, with where its knob and its contact stand.</summary>
/// <remarks>
/// Backlash is lost motion: the knob turns freely inside a gap of <see cref="Backlash"/> and takes the contact along at the gap's ends
/// (the play operator). After a turn one way, a turn the other way moves nothing until it has gone through the whole gap.
/// </remarks>
public sealed record Screw
{
    /// <summary>Turns from the middle at which the thread ends, either way.</summary>
    public const double TurnsToTheEnd = 10;

    /// <param name="name">The name on the knob.</param>
    /// <param name="pitch">Advance of the contact in one turn, more than zero.</param>
    /// <param name="sense">Which way a clockwise turn moves the contact.</param>
    /// <param name="backlash">Lost motion of the knob on reversal, zero or more, less than one turn.</param>
    public Screw(string name, Length pitch, ScrewSense sense, Angle backlash)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(name);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(pitch.Millimetres, nameof(pitch));
        ArgumentOutOfRangeException.ThrowIfNegative(backlash.Degrees, nameof(backlash));
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(backlash.Degrees, 360, nameof(backlash));
        (Name, Pitch, Sense, Backlash) = (name, pitch, sense, backlash);
    }

    public string Name { get; }

    public Length Pitch { get; }

    public ScrewSense Sense { get; }

    public Angle Backlash { get; }

    /// <summary>Turns of the knob so far, clockwise positive.</summary>
    public double KnobTurns { get; init; }

    /// <summary>Turns that the contact has followed; it differs from <see cref="KnobTurns"/> by half the backlash at most.</summary>
    public double ContactTurns { get; init; }

    /// <summary>How far the contact stands forwards of its middle place; negative is towards the knob.</summary>
    public Length Advance => (Sense == ScrewSense.ClockwisePushes ? ContactTurns : -ContactTurns) * Pitch;

    /// <summary>The screw after a turn of its knob, clockwise positive.</summary>
    public Screw Turned(double turns)
    {
        double knob = KnobTurns + turns, half = Backlash.Degrees / 720;
        return this with { KnobTurns = knob, ContactTurns = Math.Clamp(ContactTurns, knob - half, knob + half) };
    }

    /// <summary>The same screw with its knob at a place of the gap: −1 one end, 0 the middle, +1 the other.</summary>
    public Screw WithKnobInGap(double place) => this with { KnobTurns = ContactTurns + (Math.Clamp(place, -1, 1) * Backlash.Degrees / 720) };
}
