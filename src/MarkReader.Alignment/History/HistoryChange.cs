using MarkReader.Quantities;

namespace MarkReader.Alignment.History;

/// <summary>A quantity of two components at one moment of a visit, in its own unit: mrad for a slope, mm for an offset.</summary>
/// <param name="Covariance">In the unit's square.</param>
public sealed record HistoryValue(double U, double V, Covariance2 Covariance)
{
    public double Magnitude => Math.Sqrt((U * U) + (V * V));
}

/// <summary>How a quantity went on between two visits: from how it was left at one to how it was found at the next.</summary>
/// <param name="From">When the earlier visit was.</param>
/// <param name="To">When the later one was; not before.</param>
/// <param name="Left">As it was left at the earlier visit.</param>
/// <param name="Found">As it was found at the later one.</param>
public sealed record HistoryChange(DateTimeOffset From, DateTimeOffset To, HistoryValue Left, HistoryValue Found)
{
    private const double DaysAYear = 365.25;

    // Two visits within an hour are one hour apart: no rate is worked out from nothing.
    private const double LeastDays = 1.0 / 24;

    /// <summary>
    /// Whether the quantity was left at the earlier visit as it was found there, because nothing was changed: then the one measurement ends the change before
    /// this one and begins this one, and its error enters both with opposite signs.
    /// </summary>
    public bool BeginsWhereLastEnded { get; init; }

    /// <summary>Found minus left.</summary>
    public HistoryValue Value => new(Found.U - Left.U, Found.V - Left.V, Found.Covariance + Left.Covariance);

    /// <summary>Time between the visits in months of a twelfth of 365.25 days.</summary>
    public double Months => Math.Max(LeastDays, (To - From).TotalDays) * 12 / DaysAYear;
}
