using MarkReader.Alignment.Advice;
using MarkReader.Alignment.Survey;
using MarkReader.Alignment.Texts;
using MarkReader.Quantities;
using static MarkReader.Quantities.Texts<MarkReader.Alignment.Texts.AdviserTexts>;

namespace MarkReader.Alignment.Visits;

/// <summary>The work on one leg within a visit.</summary>
/// <param name="Action">What to do on the leg; null when it is good enough to go on.</param>
internal sealed record LegStage(VisitAction? Action, string Reason, ExpectedPlace? Expected, VisitLegState State, IReadOnlyList<Warning> Warnings)
{
    /// <summary>Part of the tolerance over the bed that one leg may use up. The slopes of both legs add up at the far corners.</summary>
    private const double BedShare = 0.6;

    // As likely as not within the leg's part: then the survey tells more than another pulse on the leg.
    private const double GoOnFrom = 0.5;

    /// <param name="tightness">1, or less when a survey has shown that the leg's part is not enough.</param>
    /// <remarks>Two tolerances: the leg's own one for its verdict; for the work on it the smaller of that and its part of the bed's.</remarks>
    public static Outcome<LegStage> Of(VisitSetup setup, VisitLeg leg, VisitHistory history, double tightness = 1)
    {
        if (!LegAdviser.Advise(leg.Setup, history.Leg(leg.Name)).TryGet(out LegAdvice? stated, out Failure? failure))
            return failure with { What = AlignmentTexts.Word("legStage.leg", leg.Name, failure.What) };
        LegAdvice advice = stated;
        Length part = tightness * Part(setup, leg);
        if (part < leg.Setup.Tolerance && !LegAdviser.Advise(leg.Setup with { Tolerance = part }, history.Leg(leg.Name)).TryGet(out advice!, out failure))
            return failure;

        VisitLegState state = new(stated.State, advice.Responses);
        bool done = advice.Action is LegAction.Done
            || (stated.Action is LegAction.Done && (advice.Action is LegAction.Stop || advice.State.Spread.Probability >= GoOnFrom));
        return done
            ? new LegStage(null, string.Empty, null, state, advice.Warnings)
            : new LegStage(ActionOf(setup, leg, history, advice.Action), Say("leg.reason", leg.Name, advice.Reason), ExpectedOf(advice), state, advice.Warnings);
    }

    private static Length Part(VisitSetup setup, VisitLeg leg) => setup.Bed is { } bed && leg.Name != VisitLeg.Three
        ? Length.FromMillimetres(Math.Min(leg.Setup.Tolerance.Millimetres, BedShare * bed.Tolerance.Millimetres))
        : leg.Setup.Tolerance;

    private static VisitAction ActionOf(VisitSetup setup, VisitLeg leg, VisitHistory history, LegAction action) => action switch
    {
        LegAction.Fire fire => new VisitAction.Fire(leg.Name, fire.Path, leg.Name == VisitLeg.Two ? setup.Bed?.Travels.At(history.End) : null),
        LegAction.Turn turn => new VisitAction.Turn(leg.Name, turn.Screw, turn.Turns) { GoesBeyond = turn.GoesBeyond },
        _ => new VisitAction.Stop(),
    };

    private static ExpectedPlace? ExpectedOf(LegAdvice advice) => advice.Expected is { } e ? new(e.Mark, e.Branches.Count > 1 ? e.Branches : []) { Path = e.Path } : null;
}
