using MarkReader.Alignment.Legs;
using MarkReader.Quantities;
using MathNet.Numerics.LinearAlgebra;

namespace MarkReader.Alignment.Aiming;

/// <summary>The covariance of all observed quantities, (u, v) of each mark and then the path length of each station, by source.</summary>
internal static class ObservedCovariance
{
    public static IReadOnlyDictionary<UncertaintySource, Matrix<double>> BySource(IReadOnlyList<Observation> observations, IReadOnlyList<Station> stations)
    {
        int marks = observations.Count, size = (2 * marks) + stations.Count;
        Dictionary<UncertaintySource, Matrix<double>> parts = [];
        Matrix<double> Part(UncertaintySource source)
        {
            if (!parts.TryGetValue(source, out Matrix<double>? part))
                parts[source] = part = Matrix<double>.Build.Dense(size, size);
            return part;
        }

        for (int i = 0; i < marks; i++)
        {
            foreach (UncertaintyComponent own in observations[i].Errors.Own)
                Add(Part(own.Source), 2 * i, own.Covariance);
        }

        foreach (IGrouping<(UncertaintySource Source, string Name), (int Mark, CardVector By)> error in observations
            .SelectMany((o, i) => o.Errors.Shared.Select(s => (s.Source, s.Name, Mark: i, By: s.Displacement)))
            .GroupBy(s => (s.Source, s.Name), s => (s.Mark, s.By)))
        {
            Vector<double> all = Vector<double>.Build.Dense(size);
            foreach ((int mark, CardVector by) in error)
                (all[2 * mark], all[(2 * mark) + 1]) = (all[2 * mark] + by.U, all[(2 * mark) + 1] + by.V);
            parts[error.Key.Source] = Part(error.Key.Source) + all.OuterProduct(all);
        }

        Matrix<double> paths = Part(UncertaintySource.PathLengths);
        for (int s = 0; s < stations.Count; s++)
            paths[(2 * marks) + s, (2 * marks) + s] = Math.Pow(stations[s].PathUncertainty.Millimetres, 2);
        return parts;
    }

    private static void Add(Matrix<double> part, int at, Covariance2 c)
    {
        part[at, at] += c.Uu;
        part[at, at + 1] += c.Uv;
        part[at + 1, at] += c.Uv;
        part[at + 1, at + 1] += c.Vv;
    }
}
