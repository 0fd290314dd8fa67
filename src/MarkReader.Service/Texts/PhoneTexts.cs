namespace MarkReader.Service.Texts;

/// <summary>Names the texts about phones on the same network: PhoneTexts.resx.</summary>
internal sealed class PhoneTexts;
