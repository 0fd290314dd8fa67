using MarkReader.Quantities;

namespace MarkReader.Application.Studies;

/// <summary>The mark of one pulse.</summary>
/// <param name="Name">Where it was read: a line, or a photo's file with the mark's number.</param>
/// <param name="At">With that part of its uncertainty that differs from mark to mark; zero when none was stated.</param>
public sealed record PulseMark(string Name, MeasuredPoint At);

/// <summary>Marks of pulses at one station.</summary>
/// <param name="IsStated">Whether their own uncertainty is known.</param>
/// <param name="Notes">What should be known about them, in sentences.</param>
public sealed record PulseMarks(IReadOnlyList<PulseMark> All, bool IsStated, IReadOnlyList<string> Notes);
