namespace MarkReader.Cameras.Calibration;

/// <summary>What the photos say about one group of terms.</summary>
/// <param name="Term">The group.</param>
/// <param name="Ratio">F: mean square of its parameters over their covariance; about 1 when there is nothing.</param>
/// <param name="Kept">Whether the term stayed in the model.</param>
public sealed record TermEvidence(CameraTerms Term, double Ratio, bool Kept);
