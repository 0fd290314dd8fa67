using MarkReader.Alignment.Legs;
using MarkReader.Quantities;

namespace MarkReader.Alignment.NextPulse;

/// <summary>What one more pulse at a station would do.</summary>
/// <param name="Station">Where to fire.</param>
/// <param name="Expected">The mark to expect, with the uncertainty of the line there and the scatter of the pulse; null while the marks make no line.</param>
/// <param name="Uncertainty">Standard uncertainty of the aim point after it, √(uu + vv), mm; null when the marks would still make no line.</param>
public sealed record PulseChoice(Station Station, MeasuredPoint? Expected, double? Uncertainty);

/// <summary>Which station to fire next, and whether it pays.</summary>
/// <param name="Choices">All stations, the best first.</param>
/// <param name="Uncertainty">Standard uncertainty of the aim point now, √(uu + vv), mm; null while the marks make no line.</param>
/// <param name="Pays">Whether another pulse pays, by the rule of <see cref="NextPulseOptions"/>.</param>
public sealed record NextPulseAdvice(IReadOnlyList<PulseChoice> Choices, double? Uncertainty, bool Pays)
{
    public PulseChoice Best => Choices[0];

    /// <summary>The part by which the best pulse lessens the uncertainty; null while the marks make no line.</summary>
    public double? Gain => 1 - (Best.Uncertainty / Uncertainty);
}

/// <summary>When more pulses no longer pay.</summary>
public sealed record NextPulseOptions
{
    public static NextPulseOptions Default { get; } = new();

    /// <summary>A pulse pays only when it lessens the aim point's uncertainty by this part or more.</summary>
    public double LeastGain { get; init; } = 0.1;

    /// <summary>An uncertainty √(uu + vv) that is small enough: no pulse pays at or below it. Default: zero, never.</summary>
    public Length Enough { get; init; } = Length.Zero;

    /// <summary>Covariance of the mark of one pulse, mm².</summary>
    public Covariance2 Pulse { get; init; } = Covariance2.Isotropic(0.05);
}
