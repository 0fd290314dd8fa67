using MarkReader.Alignment.Advice;
using MarkReader.Alignment.Aiming;
using MarkReader.Alignment.Screws;
using MarkReader.Alignment.Survey;
using MarkReader.Alignment.Verdicts;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Visits;

/// <summary>The advice for a visit.</summary>
/// <param name="Action">The next action.</param>
/// <param name="Reason">Why, in a few sentences.</param>
/// <param name="Expected">Where the next mark should lie; null when none is asked for or nothing can be said yet.</param>
public sealed record VisitAdvice(VisitAction Action, string Reason, ExpectedPlace? Expected, VisitState State, IReadOnlyList<Warning> Warnings);

/// <summary>Where the next mark should lie.</summary>
/// <param name="Mark">Its place with its covariance, the mark's own error included.</param>
/// <param name="Branches">The places one by one while the sense of a screw is open, likeliest first; else empty.</param>
public sealed record ExpectedPlace(MeasuredPoint Mark, IReadOnlyList<NextMarkBranch> Branches)
{
    /// <summary>Of a leg's mark: the path length of the station at which to look, mm; null for the head's marks.</summary>
    public double? Path { get; init; }
}

/// <summary>What is known of the machine now.</summary>
/// <param name="Legs">By name; a leg without a mark is undecided.</param>
/// <param name="Survey">The corner survey; null without a bed.</param>
/// <param name="Centring">The steady mark in the aperture; null without an aperture.</param>
/// <param name="Machine">The verdict of the whole.</param>
public sealed record VisitState(IReadOnlyDictionary<string, VisitLegState> Legs, SurveyState? Survey, CentringState? Centring, Conformity Machine)
{
    /// <summary>The step that the action belongs to; null when the visit is done.</summary>
    public VisitStep? Current { get; init; }

    /// <summary>Whether <see cref="Current"/> had been left behind, for a later step or to be done anew.</summary>
    public bool IsReopened { get; init; }

    /// <summary>Steps that were skipped, with the reasons.</summary>
    public IReadOnlyDictionary<VisitStep, string> Skipped { get; init; } = new Dictionary<VisitStep, string>();

    /// <summary>Steps that had marks which count no longer, because of a change to an earlier step or to the step itself; a fresh mark ends it.</summary>
    public IReadOnlySet<VisitStep> Stale { get; init; } = new HashSet<VisitStep>();
}

/// <summary>What is known of a leg.</summary>
/// <param name="State">Verdict on its spread against its own tolerance, slope, aim point.</param>
/// <param name="Responses">What its screws do, as learned.</param>
public sealed record VisitLegState(LegState State, IReadOnlyList<ScrewResponse> Responses)
{
    public Slope? Slope => State.Slope;
}

/// <summary>What is known of the marks over the bed.</summary>
/// <param name="Marks">Marks that still count.</param>
/// <param name="Spread">The verdict on their spread; undecided while the places are not enough.</param>
/// <param name="Greatest">The greatest distance of two fitted marks; null likewise.</param>
/// <param name="Diagnosis">Terms, tests, findings; null without marks.</param>
/// <param name="Response">How the mark at a corner answers a shim, as learned.</param>
public sealed record SurveyState(int Marks, Conformity Spread, Length? Greatest, SurveyDiagnosis? Diagnosis, ShimResponse Response);

/// <summary>The steady mark against the aperture's centre.</summary>
/// <param name="Offset">The mark from the centre; null until it is measured.</param>
public sealed record CentringState(Conformity Verdict, MeasuredVector? Offset);
