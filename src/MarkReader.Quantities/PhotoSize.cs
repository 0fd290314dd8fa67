namespace MarkReader.Quantities;

/// <summary>Width and height of a photo in pixels, as displayed.</summary>
public readonly record struct PhotoSize(int Width, int Height);
