namespace MarkReader.Quantities;

/// <summary>A point in the card frame (mm) with its covariance (mm²). A class, so that no default claims zero error.</summary>
public sealed record MeasuredPoint(CardPoint Point, Covariance2 Covariance);
