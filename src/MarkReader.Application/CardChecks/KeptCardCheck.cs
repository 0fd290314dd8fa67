namespace MarkReader.Application.CardChecks;

/// <summary>A check of a printed card that is kept; it never changes.</summary>
/// <param name="Id">Counts up; never used twice.</param>
/// <param name="AddedAt">When it was made (UTC, to the millisecond).</param>
/// <param name="CameraId">The camera with whose profile it was made; null when that was deleted.</param>
/// <param name="Name">What it is called; empty for nothing.</param>
public sealed record KeptCardCheck(long Id, string Name, DateTimeOffset AddedAt, long? CameraId, CardCheckReport Report);
