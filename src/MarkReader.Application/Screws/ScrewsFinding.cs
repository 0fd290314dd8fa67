using MarkReader.Alignment.Advice;
using MarkReader.Alignment.Aiming;
using MarkReader.Alignment.Screws;
using MarkReader.Alignment.Verdicts;
using MarkReader.Application.Aiming;
using MarkReader.Quantities;

namespace MarkReader.Application.Screws;

/// <summary>The turns that take a slope away.</summary>
/// <param name="Frame">The frame, as described.</param>
/// <param name="Slope">The slope, as stated or from the marks.</param>
/// <param name="Leg">Path lengths and target; null when not known.</param>
/// <param name="Spread">The spread over the travel against its tolerance; null without path lengths.</param>
/// <param name="Screws">In the order of the frame.</param>
/// <param name="After">After all turns, each rounded to hand-sized parts and in the right direction.</param>
/// <param name="Warnings">What the user should know besides.</param>
public sealed record ScrewsFinding(
    FrameInput Frame, Slope Slope, CheckedLeg? Leg, SlopeSpread? Spread, IReadOnlyList<ScrewAdvice> Screws, AfterTurns After, IReadOnlyList<Warning> Warnings)
{
    public bool DirectionsKnown => Screws.All(s => s.Response.SenseKnown);
}

/// <summary>One screw.</summary>
/// <param name="Response">What one turn clockwise does to the slope; either way when the direction is not known.</param>
/// <param name="Wanted">The turn that the slope asks for; its sign counts only when the direction is known.</param>
/// <param name="Turn">The same in parts that a hand can set.</param>
/// <param name="First">What to try first; null when the direction is known or nothing is to be turned.</param>
/// <param name="FarMove">How far one turn clockwise moves the far mark on the tape, mm; null without path lengths.</param>
public sealed record ScrewAdvice(ScrewResponse Response, ScrewTurns Wanted, HandTurn Turn, FirstTurn? First, MeasuredVector? FarMove);

/// <summary>How far the marks spread over the travel.</summary>
/// <param name="Size">Slope times travel, across the beam.</param>
public sealed record SlopeSpread(Length Size, Length Tolerance, Conformity Verdict);

/// <summary>What to expect after the turns.</summary>
/// <param name="Near">The near mark; null when no marks were given. Its covariance holds that of a mark as good as the ones given.</param>
/// <param name="Far">The far mark, likewise.</param>
/// <param name="Spread">Slope times travel; null without path lengths.</param>
public sealed record AfterTurns(Slope Slope, MeasuredPoint? Near, MeasuredPoint? Far, Length? Spread);
