namespace MarkReader.Alignment.Screws;

/// <summary>One combination of the screws' senses.</summary>
/// <param name="Senses">+1: a turn clockwise pushes the plate, −1: it pulls; in the order of the screws.</param>
/// <param name="State">The state if this is so.</param>
/// <param name="Weight">Its probability.</param>
internal sealed record Hypothesis(int[] Senses, GaussianState State, double Weight);
