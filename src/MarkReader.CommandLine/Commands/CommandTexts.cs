using MarkReader.Quantities;

namespace MarkReader.CommandLine.Commands;

/// <summary>What the commands and their options are, and what is wrong in a call, from CommandTexts.resx.</summary>
internal sealed class CommandTexts : Texts<CommandTexts>;
