using MarkReader.Alignment.History;
using MarkReader.Alignment.Verdicts;

namespace MarkReader.Application.History;

/// <summary>A quantity at a visit.</summary>
/// <param name="Found">Before anything was changed that it depends on, or with the legs before it set anew; null when it was not measured then.</param>
/// <param name="Left">At the end, with a mark after the last change; null when there is none.</param>
/// <param name="IsChanged">Whether anything was changed that it depends on. If not, found and left are one measurement.</param>
/// <param name="Tolerance">Of its length, mrad or mm.</param>
public sealed record HistoryState(HistoryValue? Found, HistoryValue? Left, bool IsChanged, double Tolerance)
{
    /// <summary>The legs before it, when they were turned before it was found.</summary>
    internal IReadOnlyList<LegBefore> Before { get; init; } = [];

    /// <summary>The slopes of the legs before it at the end of the visit, by name.</summary>
    internal IReadOnlyDictionary<string, HistoryValue> Ends { get; init; } = new Dictionary<string, HistoryValue>();

    /// <summary>Half-length of the 95 % region of a value along its own direction.</summary>
    public static double Expanded(HistoryValue value)
    {
        (double u, double v) = value.Magnitude > 0 ? (value.U / value.Magnitude, value.V / value.Magnitude) : (1, 0);
        double variance = (u * u * value.Covariance.Uu) + (2 * u * v * value.Covariance.Uv) + (v * v * value.Covariance.Vv);
        return DecisionRule.RegionFactor * Math.Sqrt(Math.Max(0, variance));
    }
}

/// <summary>A leg that was set anew before a quantity after it was found.</summary>
/// <param name="Arm">How far its slope moves the quantity: 1 for a slope, metres for an offset in mm.</param>
/// <param name="Slope">As it stood when the quantity was found; null when that is not known.</param>
internal sealed record LegBefore(string Leg, double Arm, HistoryValue? Slope);

/// <summary>A visit in a machine's history.</summary>
/// <param name="Id">The visit's number.</param>
/// <param name="At">When it began.</param>
/// <param name="Verdict">On the machine at its end.</param>
/// <param name="States">By quantity.</param>
public sealed record HistoryVisit(long Id, DateTimeOffset At, Verdict Verdict, IReadOnlyDictionary<HistoryQuantity, HistoryState> States);
