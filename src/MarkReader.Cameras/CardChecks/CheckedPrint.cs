using MarkReader.Quantities;

namespace MarkReader.Cameras.CardChecks;

/// <summary>What is asked of a print.</summary>
/// <param name="Side">Side of the card; what is printed lies within.</param>
/// <param name="ZoneSide">Side of the square in its middle in which marks are measured.</param>
/// <param name="Rulers">What its rulers really measure; null when nobody measured them.</param>
public sealed record CheckedPrint(Length Side, Length ZoneSide, RulerScale? Rulers);

/// <summary>Measured over nominal length of the printed rulers along u and v, with the standard uncertainty of each.</summary>
public sealed record RulerScale(double U, double V, double UncertaintyU, double UncertaintyV);
