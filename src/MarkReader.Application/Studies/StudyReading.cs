using MarkReader.Quantities;

namespace MarkReader.Application.Studies;

/// <summary>Where one mark was read once.</summary>
/// <param name="Part">Which mark.</param>
/// <param name="Operator">Person or phone.</param>
/// <param name="Repeat">Which time; the photo.</param>
/// <param name="At">In the card frame.</param>
/// <param name="Stated">The uncertainty that was stated for it; null when none was.</param>
public sealed record StudyReading(string Part, string Operator, string Repeat, CardPoint At, Covariance2? Stated);

/// <summary>The readings of a study and where they come from.</summary>
/// <param name="Photos">Whether a repeat is one photo of all marks.</param>
/// <param name="Notes">What was left out of it, in sentences.</param>
public sealed record StudyReadings(IReadOnlyList<StudyReading> All, bool Photos, IReadOnlyList<string> Notes);
