using MarkReader.Quantities;

namespace MarkReader.Application.Cameras;

/// <summary>A photo of the board that could not be used.</summary>
public sealed record RefusedPhoto(string Name, Failure Failure);
