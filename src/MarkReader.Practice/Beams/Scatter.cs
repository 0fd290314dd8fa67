using MarkReader.Quantities;

namespace MarkReader.Practice.Beams;

/// <summary>What differs from pulse to pulse and from hand to hand. All are standard deviations of normal distributions, per axis.</summary>
/// <param name="Pointing">Direction of the beam at the tube's front, the same for both axes.</param>
/// <param name="Position">Place of the beam at the tube's front.</param>
/// <param name="Measurement">Error of a measured mark; also the uncertainty stated with it.</param>
/// <param name="HandTurns">Error of setting a knob, turns.</param>
public sealed record Scatter(Angle Pointing, Length Position, Length Measurement, double HandTurns)
{
    public static Scatter None { get; } = new(Angle.Zero, Length.Zero, Length.Zero, 0);
}
