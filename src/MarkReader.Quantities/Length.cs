using System.Globalization;

namespace MarkReader.Quantities;

/// <summary>A length or a distance along a path.</summary>
/// <remarks>Finite; may be negative where a direction is meant. Default: zero.</remarks>
public readonly record struct Length : IComparable<Length>
{
    /// <summary>An inch is exactly 25.4 mm (ISO 80000-3; international yard and pound agreement, 1959).</summary>
    public const double MillimetresPerInch = 25.4;

    private Length(double millimetres) => Millimetres = millimetres;

    /// <summary>The length in millimetres.</summary>
    public double Millimetres { get; }

    /// <summary>The length in inches (1 in = 25.4 mm exactly).</summary>
    public double Inches => Millimetres / MillimetresPerInch;

    public static Length Zero => default;

    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public static Length FromMillimetres(double millimetres) => new(Finite.Require(millimetres, nameof(millimetres)));

    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public static Length FromInches(double inches) => new(Finite.Require(inches, nameof(inches)) * MillimetresPerInch);

    public static Length operator +(Length left, Length right) => new(left.Millimetres + right.Millimetres);

    public static Length operator -(Length left, Length right) => new(left.Millimetres - right.Millimetres);

    public static Length operator -(Length length) => new(-length.Millimetres);

    public static Length operator *(double factor, Length length) => new(factor * length.Millimetres);

    public static bool operator <(Length left, Length right) => left.Millimetres < right.Millimetres;

    public static bool operator >(Length left, Length right) => left.Millimetres > right.Millimetres;

    public static bool operator <=(Length left, Length right) => left.Millimetres <= right.Millimetres;

    public static bool operator >=(Length left, Length right) => left.Millimetres >= right.Millimetres;

    public int CompareTo(Length other) => Millimetres.CompareTo(other.Millimetres);

    public override string ToString() => Millimetres.ToString("0.###", CultureInfo.InvariantCulture) + " mm";
}
