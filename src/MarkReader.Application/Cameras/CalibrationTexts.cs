using MarkReader.Quantities;

namespace MarkReader.Application.Cameras;

/// <summary>The words about calibrations and cameras that are kept, from CalibrationTexts.resx.</summary>
internal sealed class CalibrationTexts : Texts<CalibrationTexts>;
