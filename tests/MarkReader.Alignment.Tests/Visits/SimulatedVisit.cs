using MarkReader.Alignment.Survey;
using MarkReader.Alignment.Visits;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Tests.Visits;

/// <summary>A machine whose beam is worked out in the plane: two straight legs, screws without play, and a frame of which the far right corner may stand off.</summary>
/// <remarks>Slopes in mrad, lengths in mm. It shares no formula with the adviser; a traced machine is tried in tools/MarkReader.Trials.</remarks>
internal sealed class SimulatedVisit
{
    private const double TurnA = 46, TurnB = -33;

    private readonly double[,] _corners = new double[2, 2];
    private CardVector _one, _two, _steady;
    private GantryEnd _end = GantryEnd.Near;

    public Random Random { get; init; } = new(1);

    /// <summary>Standard deviation of a mark, per component; marks state 0.05 mm or, where it is larger, this.</summary>
    public double Noise { get; init; } = SomeVisit.Sigma;

    public CardVector SlopeOne { init => _one = value; }

    public CardVector SlopeTwo { init => _two = value; }

    /// <summary>Where the beam enters with all slopes gone.</summary>
    public CardVector Steady { init => _steady = value; }

    /// <summary>Height of the mark at the far right corner above the others.</summary>
    public double Twist { init => _corners[1, 1] = value; }

    /// <summary>mm of mark for one mm of shim.</summary>
    public double ShimResponse { get; init; } = -1;

    /// <summary>Where the mark lies, without its noise.</summary>
    public CardVector AtHead(double x, double y)
    {
        double s = x / 500, t = y / 400;
        double lift = (((1 - s) * (1 - t) * _corners[0, 0]) + (s * (1 - t) * _corners[1, 0])) + (((1 - s) * t * _corners[0, 1]) + (s * t * _corners[1, 1]));
        return _steady + ((80 + y) / 1000 * _one) + ((60 + x) / 1000 * _two) + new CardVector(0, lift);
    }

    /// <summary>Greatest distance of two marks at the corners.</summary>
    public double Spread()
    {
        CardVector[] corners = [AtHead(0, 0), AtHead(500, 0), AtHead(0, 400), AtHead(500, 400)];
        return corners.Max(a => corners.Max(b => (a - b).Magnitude));
    }

    public VisitEvent Do(VisitAction action)
    {
        switch (action)
        {
            case VisitAction.Fire { Leg: "1" } fire:
                CardVector across = fire.Path / 1000 * _one;
                return new VisitEvent.Mark("1", fire.Path, Seen(new(across.U * Math.Sqrt(2), across.V)));
            case VisitAction.Fire fire:
                return new VisitEvent.Mark(fire.Leg, fire.Path, Seen(AtHead(fire.Path - 60, fire.Gantry?.Millimetres ?? (_end == GantryEnd.Far ? 400 : 0))));
            case VisitAction.Survey survey:
                return new VisitEvent.Survey(new(survey.X, survey.Y, Seen(AtHead(survey.X.Millimetres, survey.Y.Millimetres))));
            case VisitAction.Turn turn:
                CardVector by = turn.Screw == "A" ? new(TurnA * turn.Turns, 0) : new(0, TurnB * turn.Turns);
                // A plane mirror hands the tilt of leg 1 on to leg 2.
                (_one, _two) = (turn.Leg == "1" ? _one + by : _one, _two + by);
                return new VisitEvent.Turn(turn.Leg, turn.Screw, turn.Turns);
            case VisitAction.Shim shim:
                _corners[shim.Corner.IsRight() ? 1 : 0, shim.Corner.End() == GantryEnd.Far ? 1 : 0] += ShimResponse * shim.Height.Millimetres;
                return new VisitEvent.Shim(shim.Corner, shim.Height);
            case VisitAction.MoveTarget move:
                _steady -= move.By;
                return new VisitEvent.MoveTarget(move.By);
            case VisitAction.RaiseTube raise:
                _steady += new CardVector(0, raise.Height.Millimetres);
                return new VisitEvent.RaiseTube(raise.Height);
            case VisitAction.Realign realign:
                _end = realign.At;
                return new VisitEvent.Realign(realign.Leg, realign.At);
            default:
                throw new InvalidOperationException("Done and stop ask for nothing.");
        }
    }

    private MeasuredPoint Seen(CardVector at) => Some.Point(at.U + (Noise * Normal()), at.V + (Noise * Normal()), Math.Max(Noise, SomeVisit.Sigma));

    private double Normal() => Math.Sqrt(-2 * Math.Log(1 - Random.NextDouble())) * Math.Cos(2 * Math.PI * Random.NextDouble());
}
