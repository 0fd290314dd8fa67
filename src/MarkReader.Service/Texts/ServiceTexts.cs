using MarkReader.Quantities;

namespace MarkReader.Service.Texts;

/// <summary>What the service refuses, from ServiceTexts.resx.</summary>
internal sealed class ServiceTexts : Texts<ServiceTexts>;
