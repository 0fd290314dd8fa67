using MarkReader.Quantities;

namespace MarkReader.Cameras.CardChecks;

/// <summary>What a mark on the card would be read wrong by, because of the card alone.</summary>
/// <param name="Straight">Over the zone, row by row from below, in a photo from straight above.</param>
/// <param name="Worsts">At the same places the largest error of all photos that were looked at.</param>
/// <param name="Worst">The largest error, in a photo from above or from any side at <see cref="SideTilt"/>.</param>
/// <param name="Rms">Root mean square over the zone, in a photo from straight above.</param>
/// <param name="RmsUncertainty">Its standard uncertainty.</param>
/// <param name="WorstAtLeast">The worst error is larger, with 95 % confidence.</param>
/// <param name="WorstAtMost">The worst error is smaller, with 95 % confidence.</param>
public sealed record ErrorField(IReadOnlyList<ErrorPlace> Straight, IReadOnlyList<ErrorPlace> Worsts, ErrorPlace Worst, Length Rms, Length RmsUncertainty, Length WorstAtLeast, Length WorstAtMost)
{
    /// <summary>Places along each side of the zone.</summary>
    public const int Side = 7;

    /// <summary>How far a photo that is meant to be from straight above is tilted at most (common practice, no source).</summary>
    public static Angle SideTilt { get; } = Angle.FromDegrees(20);

    /// <summary>Whether the card is good enough for a limit. Decision with guard bands as in JCGM 106:2012, 8.3.</summary>
    public CardVerdict Against(Length limit) => WorstAtMost <= limit ? CardVerdict.Good : WorstAtLeast > limit ? CardVerdict.NotGood : CardVerdict.CannotTell;
}

/// <summary>The error at one place.</summary>
/// <param name="At">Where the mark is.</param>
/// <param name="Error">Where it is read, less where it is.</param>
/// <param name="Covariance">Of the error.</param>
/// <param name="Tilt">Of the photo.</param>
public sealed record ErrorPlace(CardPoint At, CardVector Error, Covariance2 Covariance, Angle Tilt)
{
    /// <summary>Standard uncertainty of the error's size.</summary>
    public Length StandardUncertainty => Length.FromMillimetres(Error.Magnitude > 0
        ? Math.Sqrt(Math.Max(0, Covariance.Transform(Error.U, Error.V, 0, 0).Uu)) / Error.Magnitude
        : Covariance.Ellipse(1).SemiMajor);
}

/// <summary>What can be said of a card.</summary>
public enum CardVerdict
{
    Good,
    NotGood,
    CannotTell,
}
