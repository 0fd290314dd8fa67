namespace MarkReader.Service.Uploads;

/// <summary>Photos that are held together, and how a form names them.</summary>
/// <param name="Token">Cannot be guessed.</param>
/// <param name="Person">Whose photos they are; empty where that is not asked.</param>
/// <param name="Photos">In the order in which they were chosen.</param>
public sealed record HeldSet(string Token, string Person, IReadOnlyList<HeldPhoto> Photos);

/// <summary>One of them.</summary>
/// <param name="Name">Of its file, as it can be shown.</param>
/// <param name="Offset">Where its bytes begin in the file of the set.</param>
/// <param name="Length">How many they are.</param>
public sealed record HeldPhoto(string Name, long Offset, long Length);
