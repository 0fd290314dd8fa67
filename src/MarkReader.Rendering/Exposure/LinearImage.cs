namespace MarkReader.Rendering.Exposure;

/// <summary>A picture in linear light, one plane a channel, 1 = clipping.</summary>
public sealed class LinearImage(int width, int height)
{
    public int Width { get; } = width;

    public int Height { get; } = height;

    /// <summary>Red, green, blue; each row after row.</summary>
    public float[][] Planes { get; } = [new float[width * height], new float[width * height], new float[width * height]];
}
