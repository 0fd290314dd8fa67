using MarkReader.Quantities;

namespace MarkReader.CommandLine.Output;

/// <summary>What the program prints for people, from OutputTexts.resx.</summary>
internal sealed class OutputTexts : Texts<OutputTexts>;
