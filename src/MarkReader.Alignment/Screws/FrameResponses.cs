using MarkReader.Alignment.Advice;
using MarkReader.Alignment.Frames;
using MarkReader.Alignment.Legs;
using MarkReader.Alignment.Verdicts;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Screws;

/// <summary>What the screws of a frame do, by its description and by what earlier visits learned, before any turn of this one.</summary>
/// <remarks>Responses by the vector law of reflection (<see cref="ScrewGeometry"/>), their uncertainty by <see cref="ScrewHabits"/> or as given with a known response.</remarks>
public sealed class FrameResponses
{
    private readonly GaussianState _state;

    private FrameResponses(LegModel model)
    {
        StateLayout layout = new(model.Screws.Count, []);
        Belief belief = new(model, layout, ScrewPrior.Of(model, layout));
        (_state, Screws, Habits) = (belief.Likeliest.State, belief.Responses(), model.Habits);
    }

    /// <summary>In the order of the frame's screws. Where the direction is not known a clockwise turn is taken to push the plate.</summary>
    public IReadOnlyList<ScrewResponse> Screws { get; }

    /// <summary>What was assumed.</summary>
    public ScrewHabits Habits { get; }

    /// <param name="frame">The frame.</param>
    /// <param name="known">Responses from an earlier visit; may be empty. Refusals: <see cref="AdviceFailures"/>.</param>
    public static Outcome<FrameResponses> Of(MirrorFrame frame, IReadOnlyList<KnownResponse> known) =>
        KnownResponseChecks.All(frame.Screws, known) is { } wrong
            ? wrong
            : new FrameResponses(new(Leg.Square, 0, frame, known, ScrewHabits.Usual));

    /// <summary>How far one turn clockwise moves the mark at a station, mm, on the tape: the swing over the path, and the small shift at the mirror.</summary>
    /// <param name="screw">Index of the screw.</param>
    /// <param name="path">The station's path length.</param>
    /// <param name="incidence">The target's angle to the beam in the plane of u; first order in the slope.</param>
    public MeasuredVector MoveAt(int screw, Length path, Angle incidence)
    {
        int x = StateLayout.Response(screw), sx = x + 1, y = x + 2, sy = x + 3;
        double z = path.Millimetres / 1000, onTape = 1 / Math.Cos(incidence.Radians);
        Covariance2 covariance = new(
            _state[x, x] + (2 * z * _state[x, sx]) + (z * z * _state[sx, sx]),
            _state[x, y] + (z * (_state[x, sy] + _state[sx, y])) + (z * z * _state[sx, sy]),
            _state[y, y] + (2 * z * _state[y, sy]) + (z * z * _state[sy, sy]));
        return new(
            new(onTape * (_state.Mean[x] + (z * _state.Mean[sx])), _state.Mean[y] + (z * _state.Mean[sy])),
            covariance.Transform(onTape, 0, 0, 1));
    }
}
