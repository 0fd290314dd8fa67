using MarkReader.Quantities;

namespace MarkReader.Application.Cameras;

/// <summary>The words about calibrations and cameras that are kept, from KeptCameraTexts.resx.</summary>
internal sealed class KeptCameraTexts : Texts<KeptCameraTexts>;
