using MarkReader.Alignment.Visits;

namespace MarkReader.Application.History;

/// <summary>What is followed over the visits to a machine.</summary>
public enum HistoryKind
{
    /// <summary>The slope of a leg, mrad.</summary>
    Slope,

    /// <summary>The greatest distance of two marks over the bed, mm; shown only.</summary>
    Spread,

    /// <summary>The steady mark from the aperture's centre, mm.</summary>
    Centring,
}

/// <summary>A quantity that is followed over the visits to a machine.</summary>
/// <param name="Leg">The leg's name; null for the bed and the aperture.</param>
public sealed record HistoryQuantity(HistoryKind Kind, string? Leg = null)
{
    public static HistoryQuantity Spread { get; } = new(HistoryKind.Spread);

    public static HistoryQuantity Centring { get; } = new(HistoryKind.Centring);

    /// <summary>slope-1, slope-2, slope-3, spread, centring.</summary>
    public string Name => Kind switch
    {
        HistoryKind.Slope => "slope-" + Leg,
        HistoryKind.Spread => "spread",
        _ => "centring",
    };

    /// <summary>mrad or mm.</summary>
    public bool IsLength => Kind != HistoryKind.Slope;

    /// <summary>Those of a machine, in the order of the work.</summary>
    internal static IEnumerable<HistoryQuantity> Of(VisitSetup setup)
    {
        foreach (VisitLeg leg in setup.Legs)
            yield return new(HistoryKind.Slope, leg.Name);
        if (setup.Bed is not null)
            yield return Spread;
        if (setup.Aperture is not null)
            yield return Centring;
    }
}
