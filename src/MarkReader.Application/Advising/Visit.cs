using MarkReader.Alignment.Visits;
using MarkReader.Quantities;

namespace MarkReader.Application.Advising;

/// <summary>A machine and what has happened on a visit to it.</summary>
/// <param name="Warnings">What in its file was not used, and what in it does not agree.</param>
public sealed record Visit(VisitSetup Setup, IReadOnlyList<VisitEvent> Events, IReadOnlyList<Warning> Warnings);
