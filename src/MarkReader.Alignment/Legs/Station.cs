using MarkReader.Quantities;

namespace MarkReader.Alignment.Legs;

/// <summary>A place of the carriage at which test pulses are fired.</summary>
/// <param name="Path">Path length L from the source mirror's reflecting point to the origin of the card frame on the target; positive.</param>
/// <param name="PathUncertainty">Standard uncertainty of L.</param>
/// <remarks>Equal stations are one station: its marks share one error of L, however many pulses are fired there.</remarks>
public sealed record Station(Length Path, Length PathUncertainty);

/// <summary>A mark and the station at which its pulse was fired.</summary>
/// <param name="Station">The station.</param>
/// <param name="Place">The mark in the card frame, on the tape.</param>
/// <param name="Errors">What may be wrong with its place.</param>
public sealed record Observation(Station Station, CardPoint Place, MarkErrors Errors)
{
    /// <summary>A mark whose covariance is not told apart by source.</summary>
    public Observation(Station station, MeasuredPoint mark)
        : this(station, mark.Point, MarkErrors.Undivided(mark.Covariance))
    {
    }

    /// <summary>The mark with the covariance of all its errors.</summary>
    public MeasuredPoint Mark => new(Place, Errors.Covariance);
}
