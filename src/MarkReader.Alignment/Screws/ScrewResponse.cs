using MarkReader.Quantities;

namespace MarkReader.Alignment.Screws;

/// <summary>What one turn clockwise of a screw does to the slope of its leg, as learned so far.</summary>
/// <param name="Screw">The screw.</param>
/// <param name="U">Change of the slope in the plane of u, mrad per turn, in the likelier sense.</param>
/// <param name="V">Along v.</param>
/// <param name="Covariance">Of (U, V), that sense taken as right; (mrad per turn)².</param>
/// <param name="SenseProbability">That the sense is the likelier one: 0.5 when nothing is known, near 1 when it is learned.</param>
/// <param name="Backlash">Lost motion when the direction is reversed.</param>
public sealed record ScrewResponse(string Screw, double U, double V, Covariance2 Covariance, double SenseProbability, Angle Backlash)
{
    /// <summary>The sense is taken as known from this probability on.</summary>
    public const double SenseKnownFrom = 0.98;

    public bool SenseKnown => SenseProbability >= SenseKnownFrom;

    /// <summary>For the record of the machine, to be given at the next visit; null while the sense is not known.</summary>
    public KnownResponse? ToRecord() => SenseKnown
        ? new(Screw, U, V, Math.Sqrt((Covariance.Uu + Covariance.Vv) / 2))
        : null;
}

/// <summary>A screw's response from an earlier visit: in a visit's JSON an entry of <c>frame.response</c> with the same names.</summary>
/// <param name="Screw">The screw.</param>
/// <param name="U">Change of the slope for one turn clockwise, mrad per turn, in the plane of u, across the beam.</param>
/// <param name="V">Along v.</param>
/// <param name="Uncertainty">Standard uncertainty of each component, mrad per turn; above zero.</param>
public sealed record KnownResponse(string Screw, double U, double V, double Uncertainty);
