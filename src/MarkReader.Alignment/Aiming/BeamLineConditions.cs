using MarkReader.Alignment.Legs;
using MarkReader.Alignment.LineFitting;
using MarkReader.Quantities;
using MathNet.Numerics.LinearAlgebra;

namespace MarkReader.Alignment.Aiming;

/// <summary>Each mark lies on the beam's line: x − x0 − sx·z = 0 and y − y0 − sy·z = 0.</summary>
/// <remarks>
/// Parameters: x0, sx, y0, sy. Observed: (u, v) of each mark, then the path length of each station once, so that the
/// marks of one station share its error; marks may share others (<see cref="MarkErrors.Shared"/>).
/// </remarks>
internal sealed class BeamLineConditions : IConditions
{
    private readonly BeamFrame _frame;
    private readonly int _marks;
    private readonly int[] _stationOf;

    public BeamLineConditions(BeamFrame frame, IReadOnlyList<Observation> observations)
    {
        _frame = frame;
        _marks = observations.Count;
        List<Station> stations = [.. observations.Select(o => o.Station).Distinct()];
        _stationOf = [.. observations.Select(o => stations.IndexOf(o.Station))];
        Observed = Vector<double>.Build.DenseOfEnumerable(
            [.. observations.SelectMany(o => new[] { o.Place.U, o.Place.V }), .. stations.Select(s => s.Path.Millimetres)]);
        Parts = ObservedCovariance.BySource(observations, stations);
        Covariance = Parts.Values.Aggregate((a, b) => a + b);
        Start = StartFrom(observations);
    }

    public Vector<double> Observed { get; }

    public Matrix<double> Covariance { get; }

    /// <summary>The covariance by source; they add up to it.</summary>
    public IReadOnlyDictionary<UncertaintySource, Matrix<double>> Parts { get; }

    public Vector<double> Start { get; }

    public (Vector<double> Value, Matrix<double> ByObserved) At(Vector<double> parameters)
    {
        BeamLine line = Line(parameters);
        Vector<double> value = Vector<double>.Build.Dense(2 * _marks);
        Matrix<double> byObserved = Matrix<double>.Build.Dense(2 * _marks, Observed.Count);
        for (int i = 0; i < _marks; i++)
        {
            (int x, int y, int path) = Places(i);
            double z = Along(Observed, i);
            value[x] = (Observed[x] * _frame.Cos) - line.X0 - (line.Sx * z);
            value[y] = Observed[y] - line.Y0 - (line.Sy * z);
            byObserved[x, x] = _frame.Cos - (line.Sx * _frame.Sin);
            byObserved[y, x] = -line.Sy * _frame.Sin;
            byObserved[y, y] = 1;
            (byObserved[x, path], byObserved[y, path]) = (-line.Sx, -line.Sy);
        }

        return (value, byObserved);
    }

    public Matrix<double> ByParameters(Vector<double> parameters, Vector<double> adjusted)
    {
        Matrix<double> result = Matrix<double>.Build.Dense(2 * _marks, 4);
        for (int i = 0; i < _marks; i++)
        {
            (int x, int y, _) = Places(i);
            (result[x, 0], result[x, 1]) = (-1, -Along(adjusted, i));
            (result[y, 2], result[y, 3]) = (-1, -Along(adjusted, i));
        }

        return result;
    }

    public static BeamLine Line(Vector<double> parameters) => new(parameters[0], parameters[1], parameters[2], parameters[3]);

    private (int X, int Y, int Path) Places(int mark) => (2 * mark, (2 * mark) + 1, (2 * _marks) + _stationOf[mark]);

    // z of a mark: the path to the carriage's origin and, on a tilted tape, what u adds to it.
    private double Along(Vector<double> observed, int mark)
    {
        (int x, _, int path) = Places(mark);
        return observed[path] + (observed[x] * _frame.Sin);
    }

    // Each component alone, path lengths and tape positions taken as exact.
    private Vector<double> StartFrom(IReadOnlyList<Observation> observations)
    {
        double[] z = [.. observations.Select(o => o.Station.Path.Millimetres + (o.Place.U * _frame.Sin))];
        double[] one = [.. z.Select(_ => 1.0)];
        FittedLine x = LineFit.Weighted(z, [.. observations.Select(o => o.Place.U * _frame.Cos)], one);
        FittedLine y = LineFit.Weighted(z, [.. observations.Select(o => o.Place.V)], one);
        return Vector<double>.Build.Dense([x.Intercept, x.Slope, y.Intercept, y.Slope]);
    }
}
