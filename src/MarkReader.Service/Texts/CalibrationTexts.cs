namespace MarkReader.Service.Texts;

/// <summary>Names the texts of the cameras' pages.</summary>
internal sealed class CalibrationTexts;
