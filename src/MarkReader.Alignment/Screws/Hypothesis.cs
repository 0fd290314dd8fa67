namespace MarkReader.Alignment.Screws;

/// <summary>One combination of the screws' senses.</summary>
/// <param name="Senses">+1: a turn clockwise pushes the plate, −1: it pulls, 0: the screw acts unlike its description; in the order of the screws. A known response counts as +1.</param>
/// <param name="State">The state if this is so.</param>
/// <param name="Weight">Its probability.</param>
internal sealed record Hypothesis(int[] Senses, GaussianState State, double Weight);
