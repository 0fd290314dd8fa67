using MarkReader.Alignment.Legs;
using MarkReader.Alignment.LineFitting;
using MathNet.Numerics.LinearAlgebra;

namespace MarkReader.Alignment.Aiming;

/// <summary>The lines of several rounds cross at z = −k: x − X − sx·(z + k) = 0 and y − Y − sy·(z + k) = 0 for the marks of each round.</summary>
/// <remarks>Parameters: k, X, Y, then sx and sy of each round. Observed: (u, v) of all marks, then the path length of each station once, also when several rounds use it.</remarks>
internal sealed class PivotConditions : IConditions
{
    private const int Common = 3;

    private readonly BeamFrame _frame;
    private readonly Observation[] _marks;
    private readonly int[] _roundOf;
    private readonly int[] _stationOf;
    private readonly int _rounds;

    public PivotConditions(BeamFrame frame, IReadOnlyList<IReadOnlyList<Observation>> rounds, Vector<double> start)
    {
        _frame = frame;
        _rounds = rounds.Count;
        _marks = [.. rounds.SelectMany(r => r)];
        _roundOf = [.. rounds.SelectMany((r, i) => r.Select(_ => i))];
        List<Station> stations = [.. _marks.Select(o => o.Station).Distinct()];
        _stationOf = [.. _marks.Select(o => stations.IndexOf(o.Station))];
        Observed = Vector<double>.Build.DenseOfEnumerable([.. _marks.SelectMany(o => new[] { o.Place.U, o.Place.V }), .. stations.Select(s => s.Path.Millimetres)]);
        Covariance = ObservedCovariance.BySource(_marks, stations).Values.Aggregate((a, b) => a + b);
        Start = start;
    }

    public Vector<double> Observed { get; }

    public Matrix<double> Covariance { get; }

    public Vector<double> Start { get; }

    public (Vector<double> Value, Matrix<double> ByObserved) At(Vector<double> parameters)
    {
        Vector<double> value = Vector<double>.Build.Dense(2 * _marks.Length);
        Matrix<double> byObserved = Matrix<double>.Build.Dense(2 * _marks.Length, Observed.Count);
        for (int i = 0; i < _marks.Length; i++)
        {
            (double sx, double sy) = Slopes(parameters, i);
            (int x, int y, int path) = (2 * i, (2 * i) + 1, (2 * _marks.Length) + _stationOf[i]);
            double z = Observed[path] + (Observed[x] * _frame.Sin) + parameters[0];
            value[x] = (Observed[x] * _frame.Cos) - parameters[1] - (sx * z);
            value[y] = Observed[y] - parameters[2] - (sy * z);
            byObserved[x, x] = _frame.Cos - (sx * _frame.Sin);
            byObserved[y, x] = -sy * _frame.Sin;
            byObserved[y, y] = 1;
            (byObserved[x, path], byObserved[y, path]) = (-sx, -sy);
        }

        return (value, byObserved);
    }

    public Matrix<double> ByParameters(Vector<double> parameters, Vector<double> adjusted)
    {
        Matrix<double> result = Matrix<double>.Build.Dense(2 * _marks.Length, Common + (2 * _rounds));
        for (int i = 0; i < _marks.Length; i++)
        {
            (double sx, double sy) = Slopes(parameters, i);
            double z = adjusted[(2 * _marks.Length) + _stationOf[i]] + (adjusted[2 * i] * _frame.Sin) + parameters[0];
            (result[2 * i, 0], result[2 * i, 1], result[2 * i, Common + (2 * _roundOf[i])]) = (-sx, -1, -z);
            (result[(2 * i) + 1, 0], result[(2 * i) + 1, 2], result[(2 * i) + 1, Common + (2 * _roundOf[i]) + 1]) = (-sy, -1, -z);
        }

        return result;
    }

    private (double Sx, double Sy) Slopes(Vector<double> parameters, int mark) =>
        (parameters[Common + (2 * _roundOf[mark])], parameters[Common + (2 * _roundOf[mark]) + 1]);
}
