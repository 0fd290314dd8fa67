using System.Globalization;

namespace MarkReader.Quantities;

/// <summary>A plane angle.</summary>
/// <remarks>Finite, not reduced to one turn. Default: zero.</remarks>
public readonly record struct Angle
{
    private Angle(double radians) => Radians = radians;

    public double Radians { get; }

    public double Milliradians => Radians * 1000;

    public double Degrees => Radians * 180 / Math.PI;

    public static Angle Zero => default;

    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public static Angle FromRadians(double radians) => new(Finite.Require(radians, nameof(radians)));

    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public static Angle FromMilliradians(double milliradians) => new(Finite.Require(milliradians, nameof(milliradians)) / 1000);

    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public static Angle FromDegrees(double degrees) => new(Finite.Require(degrees, nameof(degrees)) * Math.PI / 180);

    public override string ToString() => Degrees.ToString("0.###", CultureInfo.InvariantCulture) + " deg";
}
