namespace MarkReader.Alignment.Frames;

/// <summary>One of the three places on which the mirror's plate rests.</summary>
/// <param name="Screw">Name of the screw; null for the pivot, which does not move.</param>
/// <param name="X">To the right, mm, as seen facing the knobs; the beam meets the mirror at (0, 0) unless the frame says otherwise.</param>
/// <param name="Y">Upwards, mm.</param>
public sealed record FrameContact(string? Screw, double X, double Y);

/// <summary>Where a screw sits.</summary>
public sealed record ScrewCorner(string Screw, FrameCorner At);
