namespace MarkReader.Application.Cameras;

/// <summary>A photo of the board that was handed in.</summary>
public sealed record BoardPhotoFile(string Name, ReadOnlyMemory<byte> Bytes);
