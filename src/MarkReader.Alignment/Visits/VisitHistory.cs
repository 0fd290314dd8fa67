using MarkReader.Alignment.Advice;
using MarkReader.Alignment.Estimates;
using MarkReader.Alignment.LineFitting;
using MarkReader.Alignment.Screws;
using MarkReader.Alignment.Survey;
using MarkReader.Alignment.Verdicts;
using MarkReader.Quantities;
using static MarkReader.Quantities.Texts<MarkReader.Alignment.Texts.AdviserTexts>;

namespace MarkReader.Alignment.Visits;

/// <summary>What of a visit's events still counts, sorted by the step of the job that it belongs to.</summary>
/// <remarks>
/// A change to an earlier step makes every later one stale. A survey mark at the end of the gantry's travel at which leg 2 is aligned is a mark of leg 2 as well:
/// head and tape stand as at a station of that leg.
/// </remarks>
internal sealed class VisitHistory
{
    // A gantry this part of its travel from an end stands at that end.
    private const double AtEnd = 0.02;

    // A head this near to a station's place stands there, mm.
    private const double AtStation = 2;

    private readonly VisitSetup _setup;
    private readonly Dictionary<string, List<LegEvent>> _legs;
    private readonly List<SurveyMark> _survey = [];
    private List<SurveyMark>? _sinceMove;
    private readonly Dictionary<BedCorner, Length> _shims = [];
    private bool _legTwoShifted;
    private int _elsewhere;
    private (BedCorner Corner, Length Height, Prediction Before)? _shimmed;
    private readonly Dictionary<VisitStep, string> _skipped = [];
    private readonly HashSet<VisitStep> _stale = [], _again = [];
    private VisitStep? _farthest;

    private VisitHistory(VisitSetup setup)
    {
        _setup = setup;
        _legs = setup.Legs.ToDictionary(l => l.Name, _ => new List<LegEvent>());
    }

    /// <summary>The survey marks that count for the spread over the bed.</summary>
    public IReadOnlyList<SurveyMark> Survey => _survey;

    /// <summary>The survey marks that tell where the steady mark is: those after the target was last moved, or all.</summary>
    public IReadOnlyList<SurveyMark> Steady => _sinceMove ?? _survey;

    /// <summary>Whether the target was moved after the marks of <see cref="Survey"/>.</summary>
    public bool IsMoved => _sinceMove is not null;

    /// <summary>Where the gantry stands for the marks of leg 2.</summary>
    public GantryEnd End { get; private set; }

    /// <summary>How the mark at a corner answers a shim.</summary>
    public ShimResponse Response { get; private set; } = ShimResponse.Prior;

    public int Shims { get; private set; }

    /// <summary>The shims that this visit has put under a corner.</summary>
    public Length ShimsAt(BedCorner corner) => _shims.GetValueOrDefault(corner);

    /// <summary>What the user should know of the events.</summary>
    public IReadOnlyList<Warning> Warnings => _elsewhere == 0
        ? []
        : [new("gantryElsewhere", Say("warning.gantryElsewhere", _elsewhere))];

    public IReadOnlyDictionary<VisitStep, string> Skipped => _skipped;

    public IReadOnlySet<VisitStep> Stale => _stale;

    /// <summary>Whether a step was left behind, for a later one or to be done anew, so that work on it now is work on it again.</summary>
    public bool IsReopened(VisitStep step) => _farthest > step || _again.Contains(step);

    public IReadOnlyList<LegEvent> Leg(string name) => _legs[name];

    public static VisitHistory Of(VisitSetup setup, IReadOnlyList<VisitEvent> events)
    {
        VisitHistory history = new(setup);
        foreach (VisitEvent e in events)
            history.Take(e);
        history.Learn();
        return history;
    }

    private void Take(VisitEvent e)
    {
        if (Touched(e) is { } worked)
        {
            _skipped.Remove(worked);
            if (e is VisitEvent.Again or VisitEvent.Disturbed)
                _again.Add(worked);
            else if (_farthest is not { } farthest || worked > farthest)
                _farthest = worked;
        }

        switch (e)
        {
            case VisitEvent.Skip skip:
                _skipped[skip.Step] = skip.Reason;
                break;
            case VisitEvent.Again again:
                Again(again.Step);
                break;
            case VisitEvent.Mark { Leg: VisitLeg.Two, Gantry: { } gantry } when _setup.Bed is not null && !IsAt(gantry, End):
                _elsewhere++;
                break;
            case VisitEvent.Mark mark:
                Shifted(mark.Leg);
                _legs[mark.Leg].Add(new LegEvent.Mark(mark.Path, mark.At));
                _stale.Remove(VisitSteps.OfLeg(mark.Leg));
                break;
            case VisitEvent.Turn turn:
                Shifted(turn.Leg);
                _legs[turn.Leg].Add(new LegEvent.Turn(turn.Screw, turn.Turns));
                After(turn.Leg);
                break;
            case VisitEvent.Survey survey:
                (_sinceMove ?? _survey).Add(survey.Seen);
                _stale.Remove(VisitStep.Survey);
                _stale.Remove(VisitStep.Centring);
                Continue(survey.Seen);
                break;
            case VisitEvent.Shim shim:
                Shim(shim);
                break;
            case VisitEvent.MoveTarget:
                Moved();
                _stale.Add(VisitStep.Centring);
                _legTwoShifted = true;
                Open(VisitLeg.Three);
                break;
            case VisitEvent.RaiseTube:
                Open(VisitLeg.One);
                After(VisitLeg.One);
                break;
            case VisitEvent.Disturbed disturbed:
                Open(disturbed.Leg);
                After(disturbed.Leg);
                break;
            case VisitEvent.Realign realign:
                Realign(realign);
                break;
        }
    }

    // The step that an event works on, whose skipping it ends.
    private static VisitStep? Touched(VisitEvent e) => e switch
    {
        VisitEvent.Mark mark => VisitSteps.OfLeg(mark.Leg),
        VisitEvent.Turn turn => VisitSteps.OfLeg(turn.Leg),
        VisitEvent.Realign realign => VisitSteps.OfLeg(realign.Leg),
        VisitEvent.Disturbed disturbed => VisitSteps.OfLeg(disturbed.Leg),
        VisitEvent.Survey or VisitEvent.Shim => VisitStep.Survey,
        VisitEvent.MoveTarget or VisitEvent.RaiseTube => VisitStep.Centring,
        VisitEvent.Again again => again.Step,
        _ => null,
    };

    private void Again(VisitStep step)
    {
        switch (step)
        {
            case VisitStep.Survey:
                ClearSurvey();
                break;
            case VisitStep.Centring when Steady.Count > 0:
                // As after a move of the target by nothing.
                Moved();
                _stale.Add(VisitStep.Centring);
                break;
            case VisitStep.LegOne or VisitStep.LegTwo or VisitStep.LegThree:
                Open(step.Name());
                After(step.Name());
                break;
        }
    }

    private void ClearSurvey()
    {
        Learn();
        if (_survey.Count > 0)
            _stale.UnionWith([VisitStep.Survey, VisitStep.Centring]);
        _survey.Clear();
        _sinceMove = null;
    }

    // A survey that is within keeps; one still open would mix marks before and after the move, and begins anew.
    private void Moved()
    {
        bool within = Fit() is { } fit && SurveyStage.Spread(_setup.Bed!, fit, _survey).Verdict.Verdict == Verdict.Within;
        _sinceMove = within ? [] : null;
        if (!within)
            ClearSurvey();
    }

    private void Realign(VisitEvent.Realign realign)
    {
        Open(realign.Leg);
        if (realign.Leg != VisitLeg.Two || realign.At == End)
            return;
        End = realign.At;
        foreach (SurveyMark mark in _survey)
            Continue(mark);
    }

    private void Shim(VisitEvent.Shim shim)
    {
        Learn();
        Shims++;
        _shims[shim.Corner] = ShimsAt(shim.Corner) + shim.Height;
        if (Fit() is { } fit)
            _shimmed = (shim.Corner, shim.Height, Height(fit, shim.Corner));
        // The gantry lies otherwise at this end of its travel, not at the other.
        GantryEnd kept = shim.Corner.AtOtherEnd().End();
        if (_survey.RemoveAll(m => IsMoved || !IsAt(m, kept)) > 0)
            _stale.UnionWith([VisitStep.Survey, VisitStep.Centring]);
        _sinceMove = null;
        if (shim.Corner.End() == End)
            Open(VisitLeg.Two);
        Open(VisitLeg.Three);
        // Mirror two rides on the left rail.
        if (shim.Corner.IsRight())
            return;
        Open(VisitLeg.One);
        After(VisitLeg.One);
    }

    // A later survey shows what the shim did; the twist does not depend on the slopes left in the legs.
    private void Learn()
    {
        if (_shimmed is not { } shimmed || Fit() is not { } fit)
            return;
        Response = Response.After(MeasuredLength.FromMillimetres(shimmed.Height.Millimetres, 0.03 * shimmed.Height.Millimetres), shimmed.Before, Height(fit, shimmed.Corner));
        _shimmed = null;
    }

    private static Prediction Height(SurveyFit fit, BedCorner corner)
    {
        Prediction twist = fit.Coefficient(SurveyComponent.Vertical, SurveyTerm.Twist);
        return new(CornerChoice.Sign(corner) * twist.Value, twist.Uncertainty);
    }

    // The beam of a leg has changed: later legs and the survey are stale.
    private void After(string leg)
    {
        if (leg == VisitLeg.Three)
            return;
        if (leg == VisitLeg.One)
            Open(VisitLeg.Two);
        Open(VisitLeg.Three);
        ClearSurvey();
    }

    private void Open(string leg)
    {
        if (_legs.TryGetValue(leg, out List<LegEvent>? events) && events.Count > 0 && events[^1] is not LegEvent.Disturbed)
        {
            events.Add(new LegEvent.Disturbed());
            _stale.Add(VisitSteps.OfLeg(leg));
        }
    }

    // A moved target leaves leg 2 aligned; its marks lie elsewhere, which counts once it is worked on again.
    private void Shifted(string leg)
    {
        if (leg == VisitLeg.Two && _legTwoShifted)
            Open(VisitLeg.Two);
        _legTwoShifted &= leg != VisitLeg.Two;
    }

    private void Continue(SurveyMark mark)
    {
        if (_legTwoShifted)
            return;
        LegSetup leg = _setup.Find(VisitLeg.Two)!.Setup;
        double path = leg.Near.Path.Millimetres + mark.X.Millimetres;
        double station = new[] { leg.Near.Path.Millimetres, leg.Far.Path.Millimetres }.MinBy(s => Math.Abs(s - path));
        LegEvent.Mark continued = new(station, mark.Mark);
        if (IsAt(mark, End) && Math.Abs(station - path) <= AtStation && LegSetupChecks.Events(leg.Model, [continued]) is null)
        {
            _legs[VisitLeg.Two].Add(continued);
            _stale.Remove(VisitStep.LegTwo);
        }
    }

    private SurveyFit? Fit() => _setup.Bed is { } bed ? SurveyFit.Solve(bed.Travels, Survey) : null;

    private bool IsAt(SurveyMark mark, GantryEnd end) => IsAt(mark.Y, end);

    private bool IsAt(Length gantry, GantryEnd end)
    {
        Bed bed = _setup.Bed!.Travels;
        return Math.Abs((gantry - bed.At(end)).Millimetres) <= AtEnd * bed.Y.Millimetres;
    }
}
