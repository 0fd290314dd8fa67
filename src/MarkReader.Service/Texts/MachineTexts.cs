namespace MarkReader.Service.Texts;

/// <summary>Names the texts of the machines' pages.</summary>
internal sealed class MachineTexts;
