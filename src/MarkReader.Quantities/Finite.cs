namespace MarkReader.Quantities;

/// <summary>Guards against NaN and infinities at the seams.</summary>
internal static class Finite
{
    public static double Require(double value, string name) => double.IsFinite(value)
        ? value
        : throw new ArgumentOutOfRangeException(name, value, "The value must be a finite number.");
}
