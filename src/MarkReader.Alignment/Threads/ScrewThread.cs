using System.Globalization;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Threads;

/// <summary>A screw thread: one turn moves the screw's tip by the pitch.</summary>
/// <param name="Name">As written on a drawing: "M4", "M4x0.5", "#8-32", "1/4-20".</param>
/// <param name="Series">Where its pitch comes from.</param>
/// <param name="Pitch">Advance for one turn.</param>
public sealed record ScrewThread(string Name, ThreadSeries Series, Length Pitch)
{
    /// <summary>A unified thread, whose pitch is given as threads per inch (ASME B1.1).</summary>
    public static ScrewThread Unified(string size, ThreadSeries series, int threadsPerInch) => new(
        string.Create(CultureInfo.InvariantCulture, $"{size}-{threadsPerInch}"), series, Length.FromInches(1.0 / threadsPerInch));

    /// <summary>A metric thread of the coarse series, named by its size alone (ISO 261).</summary>
    public static ScrewThread Coarse(string size, double pitch) => new(size, ThreadSeries.MetricCoarse, Length.FromMillimetres(pitch));

    /// <summary>A metric thread of a fine series, named by size and pitch (ISO 261).</summary>
    public static ScrewThread Fine(string size, double pitch) => new(
        string.Create(CultureInfo.InvariantCulture, $"{size}x{pitch}"), ThreadSeries.MetricFine, Length.FromMillimetres(pitch));
}

/// <summary>The table that a thread is from.</summary>
public enum ThreadSeries
{
    /// <summary>ISO 261 and 262, coarse pitch.</summary>
    MetricCoarse,

    /// <summary>ISO 261, a fine pitch.</summary>
    MetricFine,

    /// <summary>ASME B1.1, UNC.</summary>
    UnifiedCoarse,

    /// <summary>ASME B1.1, UNF.</summary>
    UnifiedFine,

    /// <summary>A pitch that the user measured or knows.</summary>
    Own,
}
