using MarkReader.Alignment.Visits;
using MarkReader.Quantities;

namespace MarkReader.Application.Machines;

/// <summary>A machine's document that was read and can be used. <see cref="MachineFile"/> makes it.</summary>
public sealed class MachineDocument
{
    internal MachineDocument(string text, string? name, VisitSetup setup, IReadOnlyList<Warning> warnings) => (Text, Name, Setup, Warnings) = (text, name, setup, warnings);

    /// <summary>The JSON as it was given.</summary>
    public string Text { get; }

    /// <summary>The name in it; null when it has none.</summary>
    public string? Name { get; }

    /// <summary>What was read in it.</summary>
    public VisitSetup Setup { get; }

    /// <summary>What in it was not used, and what in it does not agree.</summary>
    public IReadOnlyList<Warning> Warnings { get; }
}
