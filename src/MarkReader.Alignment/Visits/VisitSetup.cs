using MarkReader.Alignment.Advice;
using MarkReader.Alignment.Shims;
using MarkReader.Alignment.Survey;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Visits;

/// <summary>A machine to be aligned.</summary>
/// <param name="Legs">The legs, in the order of the beam: "1", "2" and, where marks below the head are to be made, "3".</param>
public sealed record VisitSetup(IReadOnlyList<VisitLeg> Legs)
{
    /// <summary>The bed; null when no corner survey is wanted. It needs a leg "2".</summary>
    public VisitBed? Bed { get; init; }

    /// <summary>The head's entry hole; null when the beam is not to be centred. It needs a bed.</summary>
    public VisitAperture? Aperture { get; init; }

    /// <summary>Washers and sheets for shims; empty: any height can be made.</summary>
    public IReadOnlyList<StockItem> Stock { get; init; } = [];

    /// <summary>Standard deviation of a mark from pulse to pulse, on each axis. A photo does not show it; who makes a mark of a photo adds it. The advice itself does not use it.</summary>
    public Length PulseScatter { get; init; } = UsualPulseScatter;

    /// <summary>Of a machine of which nothing is known (common practice, no source).</summary>
    public static Length UsualPulseScatter { get; } = Length.FromMillimetres(0.05);

    internal VisitLeg? Find(string name) => Legs.FirstOrDefault(l => l.Name == name);
}

/// <summary>A leg of the machine.</summary>
public sealed record VisitLeg(string Name, LegSetup Setup)
{
    /// <summary>Mirror one to mirror two's frame.</summary>
    public const string One = "1";

    /// <summary>Mirror two to the head's entry hole.</summary>
    public const string Two = "2";

    /// <summary>Mirror three to the bed.</summary>
    public const string Three = "3";
}

/// <summary>The bed over which the head travels.</summary>
/// <param name="Travels">Full travels of head and gantry.</param>
/// <param name="Tolerance">Largest distance of two marks over the bed.</param>
public sealed record VisitBed(Bed Travels, Length Tolerance);

/// <summary>The head's entry hole.</summary>
/// <param name="Centre">Its centre in the card frame of the head's target, with its uncertainty.</param>
/// <param name="Tolerance">Largest distance of the steady mark from it.</param>
public sealed record VisitAperture(MeasuredPoint Centre, Length Tolerance)
{
    /// <summary>Of the entry hole; advice does not use it. Default: 18 mm.</summary>
    public Length Diameter { get; init; } = Length.FromMillimetres(18);

    /// <summary>The beam's 1/e² diameter there; advice does not use it. Default: 5 mm.</summary>
    public Length BeamDiameter { get; init; } = Length.FromMillimetres(5);
}
