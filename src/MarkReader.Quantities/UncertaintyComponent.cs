namespace MarkReader.Quantities;

/// <summary>One line of an uncertainty budget (JCGM 100:2008, 4 and 5): what it comes from, and its covariance in the card frame (mm²). Components are independent.</summary>
public sealed record UncertaintyComponent(UncertaintySource Source, Covariance2 Covariance);
