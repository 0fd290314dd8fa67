namespace MarkReader.Alignment.History;

/// <summary>What a history shows.</summary>
public enum HistoryVerdict
{
    /// <summary>There are too few changes between visits for a verdict, and none of them is beyond its uncertainty.</summary>
    TooFew,

    /// <summary>No change is beyond its uncertainty.</summary>
    Steady,

    /// <summary>A constant rate explains what changed.</summary>
    Drifting,

    /// <summary>One change between two visits explains it.</summary>
    Jumped,

    /// <summary>It changed by more than its uncertainty; a drift and a jump explain it about equally well.</summary>
    Changed,

    /// <summary>It changed by more than its uncertainty, and neither a constant rate nor one jump explains it.</summary>
    Unsteady,
}

/// <summary>A size with its 95 % interval.</summary>
/// <param name="Value">Length of the vector, zero or more.</param>
/// <param name="Low">Not below zero.</param>
/// <remarks>
/// The length is propagated linearly along its own direction, u² = eᵀ·C·e (JCGM 100:2008, 5.1.2), and expanded by 1.96 (JCGM 100:2008, G.1.3);
/// for a length not clearly above its uncertainty the interval is only about right.
/// </remarks>
public sealed record HistorySize(double Value, double Low, double High);

/// <summary>The verdict on a history, with the numbers that go with it.</summary>
/// <param name="Changes">How many changes between visits were tested.</param>
/// <param name="Missing">How many more visits a verdict needs at least; 0 unless it is <see cref="HistoryVerdict.TooFew"/> or one change only.</param>
/// <param name="Probability">Probability that a steady quantity shows as much or more: the least of the three tests', times three.</param>
/// <param name="Rate">Rate of the best straight line, in the quantity's unit a month; null without changes.</param>
/// <param name="Jump">The change that stands out most: how large; null without changes.</param>
/// <param name="JumpAt">Number of that change from 0; null without changes.</param>
public sealed record HistoryFinding(HistoryVerdict Verdict, int Changes, int Missing, double Probability, HistorySize? Rate, HistorySize? Jump, int? JumpAt);
