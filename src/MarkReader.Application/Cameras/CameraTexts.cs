using MarkReader.Quantities;

namespace MarkReader.Application.Cameras;

/// <summary>The words about cameras and their calibration, from CameraTexts.resx.</summary>
public sealed class CameraTexts : Texts<CameraTexts>;
