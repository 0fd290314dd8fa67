using MarkReader.Quantities;

namespace MarkReader.Application.Interim;

/// <summary>What a version of the program measured in a set of photos.</summary>
/// <param name="Program">The version.</param>
/// <param name="Photos">In the order of their names.</param>
public sealed record InterimRecord(string Program, DateTimeOffset Made, IReadOnlyList<InterimPhoto> Photos);

/// <summary>A photo of the set.</summary>
/// <param name="Digest">SHA-256 of its file, in lower case.</param>
/// <param name="Marks">Sorted by u.</param>
/// <param name="Refusal">Code of the refusal; null when the photo was measured.</param>
/// <param name="Why">The refusal in words, which are not compared; null when the photo was measured or an earlier version kept none.</param>
public sealed record InterimPhoto(string Name, string Digest, IReadOnlyList<MeasuredPoint> Marks, string? Refusal, string? Why = null);
