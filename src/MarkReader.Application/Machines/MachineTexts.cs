using MarkReader.Quantities;

namespace MarkReader.Application.Machines;

/// <summary>The words of machines and their forms, from MachineTexts.resx.</summary>
internal sealed class MachineTexts : Texts<MachineTexts>;
