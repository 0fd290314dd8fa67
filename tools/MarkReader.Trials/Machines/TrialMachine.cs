using MarkReader.Alignment.Screws;
using MarkReader.Alignment.Visits;
using MarkReader.Application.Practising;
using MarkReader.Practice.Machines;
using MarkReader.Practice.Misalignment;
using MarkReader.Quantities;
using MarkReader.Trials.Methods;

namespace MarkReader.Trials.Machines;

/// <summary>A machine to be tried, what its owner tells of it, and its chance.</summary>
internal sealed record TrialMachine(PracticeMachine Machine, VisitSetup Setup, int Seed)
{
    public static Length Tolerance { get; } = Length.FromMillimetres(0.5);

    public Random Chance(int stream) => new((Seed * 16) + stream);

    public static TrialMachine Draw(Condition condition, int seed)
    {
        PracticeMachine machine = RandomMachines.Draw(StatedMachine.Desktop, condition.Ranges, new Random(seed));
        TrialMachine first = new(machine, PracticeSetup.Of(machine.Stated, Tolerance), seed);
        return condition.Known ? first.KnockedAfterVisit() : first;
    }

    // Half of 8 mrad tilts the beam by up to 8 mrad in the plane of incidence.
    private TrialMachine KnockedAfterVisit()
    {
        (PracticeVisit visit, VisitAdvice advice) = AdvisedVisit.Play(this, Chance(1));
        Random random = Chance(2);
        Angle Tilt() => Angle.FromMilliradians(4 * ((2 * random.NextDouble()) - 1));
        Dictionary<string, IReadOnlyList<KnownResponse>> known = advice.State.Legs.ToDictionary(
            l => l.Key, l => (IReadOnlyList<KnownResponse>)[.. l.Value.Responses.Select(r => r.ToRecord()).OfType<KnownResponse>()]);
        return this with
        {
            Machine = visit.Machine.Knock(PracticeLeg.One, Tilt(), Tilt()).Knock(PracticeLeg.Two, Tilt(), Tilt()),
            Setup = PracticeSetup.Of(Machine.Stated, Tolerance, known: known),
        };
    }
}
