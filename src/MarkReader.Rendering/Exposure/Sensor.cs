using MarkReader.Rendering.Specs;

namespace MarkReader.Rendering.Exposure;

/// <summary>Shot and read noise in linear light, a phone's smoothing of it, and sharpening.</summary>
internal static class Sensor
{
    public static void Expose(LinearImage image, SensorSpec spec, int seed)
    {
        if (spec.FullWell > 0)
            AddNoise(image, spec, seed);
        if (spec.NoiseGrain > 0 && spec.FullWell > 0)
            Convolution.Gaussian(image, spec.NoiseGrain);
        if (spec.Sharpening > 0)
            Sharpen(image, (float)spec.Sharpening);
    }

    private static void AddNoise(LinearImage image, SensorSpec spec, int seed)
    {
        float shot = (float)(1 / spec.FullWell);
        float read = (float)(spec.ReadNoise / spec.FullWell * (spec.ReadNoise / spec.FullWell));
        for (int p = 0; p < image.Planes.Length; p++)
        {
            float[] plane = image.Planes[p];
            int channel = p;
            Parallel.For(0, image.Height, y =>
            {
                float[] normals = new float[image.Width];
                new RandomStream(unchecked(((ulong)seed * 1000003UL) + ((ulong)y * 4UL) + (ulong)channel)).Normals(normals);
                Span<float> row = plane.AsSpan(y * image.Width, image.Width);
                for (int x = 0; x < row.Length; x++)
                    row[x] += normals[x] * MathF.Sqrt((Math.Max(0, row[x]) * shot) + read);
            });
        }
    }

    /// <summary>Unsharp masking with a Gaussian of 1.2 px.</summary>
    private static void Sharpen(LinearImage image, float amount)
    {
        float[][] original = [.. image.Planes];
        Convolution.Gaussian(image, 1.2);
        for (int p = 0; p < image.Planes.Length; p++)
        {
            float[] blurred = image.Planes[p];
            float[] sharp = original[p];
            for (int i = 0; i < blurred.Length; i++)
                blurred[i] = sharp[i] + (amount * (sharp[i] - blurred[i]));
        }
    }
}
