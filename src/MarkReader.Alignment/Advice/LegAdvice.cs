using MarkReader.Alignment.Aiming;
using MarkReader.Alignment.Screws;
using MarkReader.Alignment.Verdicts;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Advice;

/// <summary>The next thing that a person does on a leg.</summary>
public abstract record LegAction
{
    private LegAction()
    {
    }

    /// <summary>Fire one pulse.</summary>
    /// <param name="Path">At the station with this path length, mm.</param>
    public sealed record Fire(double Path) : LegAction;

    /// <summary>Turn one screw.</summary>
    /// <param name="Screw">Its name.</param>
    /// <param name="Turns">Positive clockwise, as seen facing the knob.</param>
    public sealed record Turn(string Screw, double Turns) : LegAction
    {
        /// <summary>Whether it goes beyond the place wanted, so that the next one comes back from one side.</summary>
        public bool GoesBeyond { get; init; }
    }

    /// <summary>The leg is within its tolerance.</summary>
    public sealed record Done : LegAction;

    /// <summary>Something does not fit and has to be looked at first; the reason says what. Later events are taken as after the repair.</summary>
    public sealed record Stop : LegAction;
}

/// <summary>Where the next mark should lie after the action.</summary>
/// <param name="Path">Station at which to look, mm.</param>
/// <param name="Mark">Its place with its covariance, the mark's own error included, over all senses of the screws that are open.</param>
/// <param name="Branches">The places one by one when the sense of a screw is open, likeliest first; otherwise one.</param>
public sealed record NextMark(double Path, MeasuredPoint Mark, IReadOnlyList<NextMarkBranch> Branches);

/// <summary>Where the next mark should lie if the screws push in one way.</summary>
/// <param name="Probability">That they do.</param>
public sealed record NextMarkBranch(double Probability, MeasuredPoint Mark);

/// <summary>What is known of a leg now.</summary>
/// <param name="Spread">Of the spread over the travel against its tolerance (<see cref="DecisionRule"/>); within only with a mark after the last turn.</param>
/// <param name="Slope">Angle between the beam and the rail; null until two stations have told it.</param>
/// <param name="Aim">Where every mark will fall once the slope is zero, in the card frame; null likewise.</param>
public sealed record LegState(Conformity Spread, Slope? Slope, MeasuredPoint? Aim)
{
    public Verdict Verdict => Spread.Verdict;
}

/// <summary>The advice for one leg.</summary>
/// <param name="Action">The next action.</param>
/// <param name="Reason">Why, in one or two sentences.</param>
/// <param name="Expected">The next mark; null when none is asked for.</param>
/// <param name="State">What is known.</param>
/// <param name="Responses">What the screws do, as learned.</param>
/// <param name="Warnings">What the user should know besides.</param>
public sealed record LegAdvice(
    LegAction Action, string Reason, NextMark? Expected, LegState State, IReadOnlyList<ScrewResponse> Responses, IReadOnlyList<Warning> Warnings);
