using MarkReader.Quantities;

namespace MarkReader.Cameras.Texts;

/// <summary>Refusals of photos, boards and profiles, from CalibrationTexts.resx.</summary>
internal sealed class CalibrationTexts : Texts<CalibrationTexts>;
