using System.Numerics;
using System.Runtime.InteropServices;

namespace MarkReader.Cameras.Calibration;

/// <summary>Sums of rows of numbers.</summary>
internal static class RowSums
{
    /// <summary>Adds <paramref name="factor"/> times one row to another of the same length, each element rounded as by itself.</summary>
    public static void AddScaled(ReadOnlySpan<double> row, double factor, Span<double> to)
    {
        to = to[..row.Length];
        ReadOnlySpan<Vector<double>> from = MemoryMarshal.Cast<double, Vector<double>>(row);
        Span<Vector<double>> sums = MemoryMarshal.Cast<double, Vector<double>>(to);
        Vector<double> f = new(factor);
        for (int i = 0; i < from.Length; i++)
            sums[i] += f * from[i];
        for (int i = from.Length * Vector<double>.Count; i < row.Length; i++)
            to[i] += factor * row[i];
    }
}
