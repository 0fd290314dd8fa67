namespace MarkReader.Imaging.Fitting;

/// <summary>The median, of an even number of values the upper one.</summary>
internal static class Medians
{
    /// <exception cref="InvalidOperationException">There is no value.</exception>
    public static double Median(this IEnumerable<double> values)
    {
        double[] sorted = [.. values.Order()];
        return sorted.Length > 0 ? sorted[sorted.Length / 2] : throw new InvalidOperationException("No value has a median.");
    }
}
