using MarkReader.Quantities;

namespace MarkReader.Alignment.Estimates;

/// <summary>A length with its standard uncertainty. A class, so that no default claims zero error.</summary>
public sealed record MeasuredLength(Length Value, Length Uncertainty)
{
    /// <summary>A length taken as exact.</summary>
    public static MeasuredLength Exact(Length value) => new(value, Length.Zero);

    /// <summary>Value and standard uncertainty in millimetres.</summary>
    public static MeasuredLength FromMillimetres(double value, double uncertainty) => new(Length.FromMillimetres(value), Length.FromMillimetres(uncertainty));
}
