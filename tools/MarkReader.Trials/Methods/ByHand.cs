using MarkReader.Practice.Machines;
using MarkReader.Quantities;
using MarkReader.Trials.Machines;
using MarkReader.Trials.Scores;

namespace MarkReader.Trials.Methods;

/// <summary>A person without the adviser, who knows the frame's description but not which way its screws push.</summary>
/// <remarks>Screw A moves the mark sideways by 2·P/a, screw B upwards by √2·P/a a turn (45° mirror). A turn that made it worse shows that the screw pushes the other way.</remarks>
internal sealed class ByHand(TrialMachine trial, bool halving)
{
    private const int MostRounds = 10;

    // What the eye makes of a mark's place on tape; the formula gets measured marks.
    private const double Eye = 0.15;

    private readonly Random _random = trial.Chance(halving ? 4 : 5);
    private readonly int[] _pulses = new int[2], _turns = new int[2];
    private PracticeMachine _machine = trial.Machine;

    public TrialResult Run()
    {
        bool seen = Leg(PracticeLeg.One, _machine.Stated.LegOne) && Leg(PracticeLeg.Two, _machine.Stated.LegTwo);
        return new(Ending.Of(trial.Machine), Ending.Of(_machine), seen ? null : "beam lost", _pulses, _turns, 0, [], null);
    }

    private bool Leg(PracticeLeg leg, StatedLeg stated)
    {
        double near = stated.NearPath.Millimetres, far = stated.FarPath.Millimetres;
        double perTurn = 2 * stated.Frame.Pitch.Millimetres / stated.Frame.Arm.Millimetres;
        double[] response = [perTurn, perTurn / Math.Sqrt(2)], before = [double.MaxValue, double.MaxValue];
        if (Fire(leg, stated, near) is not { } first || Fire(leg, stated, far) is not { } last)
            return false;
        CardVector aim = first - ((near / (far - near)) * (last - first));
        for (int round = 0; round < MostRounds; round++)
        {
            CardVector slope = halving ? (1 / (far - near)) * (last - first) : (1 / far) * (last - aim);
            if ((far - near) * slope.Magnitude <= TrialMachine.Tolerance.Millimetres / 2)
                return true;
            // By eye the far mark is brought half-way to the near one.
            CardVector wanted = halving ? (0.5 / far) * (first - last) : -1 * slope;
            Turn(leg, stated.Frame.Screws[0].Name, wanted.U, slope.U, ref response[0], ref before[0]);
            Turn(leg, stated.Frame.Screws[1].Name, wanted.V, slope.V, ref response[1], ref before[1]);
            if (Fire(leg, stated, far) is not { } seen || (halving ? Fire(leg, stated, near) : first) is not { } again)
                return false;
            (first, last) = (again, seen);
        }

        return true;
    }

    private void Turn(PracticeLeg leg, string screw, double wanted, double slope, ref double response, ref double before)
    {
        if (Math.Abs(slope) > 1.2 * before)
            response = -response;
        before = Math.Abs(slope);
        double turns = Math.Round(wanted / response * 64) / 64;
        if (turns == 0 || !_machine.Turn(leg, screw, turns, _random).TryGet(out PracticeMachine? turned, out _))
            return;
        _turns[(int)leg]++;
        _machine = turned;
    }

    // Across the beam.
    private CardVector? Fire(PracticeLeg leg, StatedLeg stated, double path)
    {
        _pulses[(int)leg]++;
        if (!_machine.Fire(_machine.StationAt(leg, Length.FromMillimetres(path)), _random).TryGet(out BurnMark? mark, out _))
            return null;
        double eye = halving ? Eye : 0;
        return new(
            (mark.Place.U * Math.Cos(stated.Incidence.Radians)) + (eye * Normal()), mark.Place.V + (eye * Normal()));
    }

    private double Normal() => Math.Sqrt(-2 * Math.Log(1 - _random.NextDouble())) * Math.Cos(2 * Math.PI * _random.NextDouble());
}
